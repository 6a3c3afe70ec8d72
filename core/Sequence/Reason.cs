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

    /// <summary>Field waits: its current is below the least permitted. Quantity and limit in amperes; time left: until it counts as missing.</summary>
    FieldBelowMinimum = 16,

    /// <summary>Field stands and must stand for its time. Quantity: field current in amperes; time left: of the build time.</summary>
    FieldBuilding = 17,

    /// <summary>A stage is closed before the line, for a turning shaft. Quantity: the stage; limit: how many will be.</summary>
    PresettingStages = 18,

    /// <summary>Line waits: the shaft turns backwards or too fast for the whole resistance. Quantity: back-EMF; limit: permitted, both in volts.</summary>
    WaitingForShaft = 19,

    /// <summary>Stage holds: speed unknown and the resistive estimate not to be used. Time left: until the speed counts as lost.</summary>
    SpeedUnknown = 20,

    /// <summary>All resistance is out and the speed is lost. Quantity: resistive back-EMF; limit: supply less brush drop, both in volts.</summary>
    RunningWithoutSpeed = 21,

    /// <summary>The supply is low. Quantity and limit in volts; time left: until the line opens.</summary>
    SupplyDip = 22,

    /// <summary>The line is open and its arc must be out before the brake closes. Time left: of the brake delay.</summary>
    BrakeDelay = 23,

    /// <summary>Brake waits: back-EMF so high that the brake's current would pass the peak. Quantity and limit in volts.</summary>
    BackEmfAboveBrake = 24,

    /// <summary>The brake is in. Quantity: speed; limit: release speed, both in rad/s; time left: until it counts as failed.</summary>
    Braking = 25,

    /// <summary>Contact waits for the current to prove it. Quantity: armature current; limit: the current expected, both in amperes; time left: until it counts as failed.</summary>
    ProvingByCurrent = 26,

    /// <summary>Brake commanded, its contact not proven closed yet. Time left: until it counts as failed.</summary>
    WaitingForBrakeContact = 27,
}
