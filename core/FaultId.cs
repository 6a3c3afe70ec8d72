namespace StarterCtl.Core;

/// <summary>What tripped the starter. Numbers are published and never reused; their order is the order of importance.</summary>
public enum FaultId
{
    /// <summary>No fault.</summary>
    None = 0,

    /// <summary>The hard-wired stop chain is open.</summary>
    EmergencyStop = 1,

    /// <summary>Supply, current or speed reading is not a number, out of its plausible range or not fresh.</summary>
    ReadingInvalid = 2,

    /// <summary>Armature current of either sign above the instantaneous trip. Value and limit in amperes.</summary>
    Overcurrent = 3,

    /// <summary>A contactor was commanded closed and its contact was not seen closed in time. Value: 0 = line, else stage.</summary>
    ContactDidNotClose = 4,

    /// <summary>A contactor was commanded open and its contact was not seen open in time. Value: 0 = line, else stage.</summary>
    ContactDidNotOpen = 5,

    /// <summary>A stage was in effect for longer than the maximum stage time. Value: stage.</summary>
    StageTookTooLong = 6,
}
