namespace StarterCtl.Core;

/// <summary>What a supply dip does to the stages. Numbers are published and never reused.</summary>
public enum DipAction
{
    /// <summary>They stay in until the dip is over or the line opens.</summary>
    LeaveStages = 0,

    /// <summary>Those whose peak would be passed when the supply returns, or is passed by the current back, open.</summary>
    PutResistanceBack = 1,
}
