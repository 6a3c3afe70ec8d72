using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>The numbers of a fault in words; everything else about a fault stands in <see cref="FaultTable"/>.</summary>
public static class FaultText
{
    /// <summary>What was measured and what it was held against; empty where the fault has no number.</summary>
    public static string Measured(FaultEntry fault) => fault.Id switch
    {
        FaultId.Overcurrent => $"{Text.Number(fault.Value)} A, limit {Text.Number(fault.Limit)} A",
        FaultId.StageTookTooLong => $"stage {Text.Number(fault.Value)}, limit {Text.Number(fault.Limit)} s",
        FaultId.ContactDidNotClose or FaultId.ContactDidNotOpen => fault.Value == 0 ? "line contactor" : $"contactor of stage {Text.Number(fault.Value)}",
        FaultId.ReadingInvalid => $"read {Text.Number(fault.Value)}, largest believed {Text.Number(fault.Limit)}",
        _ => "",
    };
}
