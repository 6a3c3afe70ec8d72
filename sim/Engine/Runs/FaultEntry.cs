using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A fault that was latched.</summary>
/// <param name="Id">Which.</param>
/// <param name="Seconds">When, s.</param>
/// <param name="Value">What was measured; unit in the fault's description.</param>
/// <param name="Limit">What it was held against.</param>
public sealed record FaultEntry(FaultId Id, double Seconds, float Value, float Limit)
{
    /// <summary>Name of the fault in the catalogue.</summary>
    public string Name => FaultTable.RowOf(Id).Name;

    /// <summary>Which reading it speaks of.</summary>
    public Channel Channel { get; init; }

    /// <summary>Phase in which it was raised.</summary>
    public Phase Phase { get; init; }

    /// <summary>Stage in effect when it was raised, 1 to the stage count + 1.</summary>
    public int Stage { get; init; }

    /// <summary>Readings, estimates and coils on that tick; null where nobody took them.</summary>
    public FaultSnapshot? Snapshot { get; init; }

    /// <summary>Takes over what a controller has latched.</summary>
    /// <param name="latch">A latch that holds a fault.</param>
    /// <param name="seconds">Time of the tick, s.</param>
    public static FaultEntry Of(FaultLatch latch, double seconds) => new(latch.Id, seconds, latch.Value, latch.Limit)
    {
        Channel = latch.Channel,
        Phase = latch.InPhase,
        Stage = latch.InStage,
        Snapshot = FaultSnapshot.Of(latch.Snapshot),
    };
}
