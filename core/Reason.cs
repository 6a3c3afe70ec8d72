namespace StarterCtl.Core;

/// <summary>
/// Why the controller does what it does on this tick. <see cref="Explanation"/> carries the numbers that belong to it.
/// Numbers are published and never reused.
/// </summary>
public enum Reason
{
    /// <summary>No tick has happened yet.</summary>
    None = 0,

    /// <summary>The settings failed their check. Quantity: the <see cref="SettingId"/>.</summary>
    SettingsInvalid = 1,

    /// <summary>Ready, start not pressed.</summary>
    WaitingForStart = 2,

    /// <summary>Start was pressed or is held, and is refused. Quantity: the <see cref="Refusal"/> bits.</summary>
    StartRefused = 3,

    /// <summary>Line commanded, its contact not proven closed yet. Time left: until it counts as failed.</summary>
    WaitingForLineContact = 4,

    /// <summary>Stage holds: back-EMF below its threshold. Quantity and limit in volts.</summary>
    BackEmfBelowThreshold = 5,

    /// <summary>Stage holds: current above the lockout. Quantity and limit in amperes.</summary>
    CurrentAboveLockout = 6,

    /// <summary>Stage holds: in effect for less than the minimum dwell. Time left: of the dwell.</summary>
    MinimumDwell = 7,

    /// <summary>Every condition is met and must stay so. Time left: of the confirm time.</summary>
    Confirming = 8,

    /// <summary>The stage's contactor is commanded on this tick. Back-EMF and threshold in volts.</summary>
    StageCutOut = 9,

    /// <summary>Stage contactor commanded, its contact not proven closed yet. Time left: until it counts as failed.</summary>
    WaitingForStageContact = 10,

    /// <summary>All resistance is out. Quantity: back-EMF; limit: supply less brush drop, both in volts.</summary>
    AllStagesCutOut = 11,

    /// <summary>Stop was asked for and a contact is not proven open yet. Time left: until it counts as failed.</summary>
    WaitingForContactsToOpen = 12,

    /// <summary>A fault is latched. Quantity: the <see cref="FaultId"/>.</summary>
    FaultLatched = 13,

    /// <summary>Reset was pressed while the cause is still there or start is held. Quantity: the <see cref="FaultId"/>.</summary>
    ResetRefused = 14,

    /// <summary>
    /// Stage holds: back-EMF so far above the supply that the current back would pass the peak. Quantity and limit in volts.
    /// </summary>
    BackEmfAboveSupply = 15,
}
