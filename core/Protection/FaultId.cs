namespace StarterCtl.Core;

/// <summary>What tripped the starter. Numbers are published and never reused; the order of importance is that of <see cref="FaultTable"/>.</summary>
public enum FaultId
{
    /// <summary>No fault.</summary>
    None = 0,

    /// <summary>The hard-wired stop chain is open.</summary>
    EmergencyStop = 1,

    /// <summary>A reading is not a number or out of its plausible range. Value and limit in the reading's unit; see <see cref="FaultLatch.Channel"/>.</summary>
    ReadingInvalid = 2,

    /// <summary>Armature current of either sign above the instantaneous trip. Value and limit in amperes.</summary>
    Overcurrent = 3,

    /// <summary>A contactor was commanded closed and its contact was not seen closed in time. Value: the <see cref="ContactNumber"/>.</summary>
    ContactDidNotClose = 4,

    /// <summary>A contactor was commanded open and its contact was not seen open in time. Value: the <see cref="ContactNumber"/>.</summary>
    ContactDidNotOpen = 5,

    /// <summary>A stage was in effect for longer than the maximum stage time. Value: stage.</summary>
    StageTookTooLong = 6,

    /// <summary>The field did not stand within its time. Value and limit: field current in amperes.</summary>
    NoField = 7,

    /// <summary>The field current fell below the least permitted while the line was closed. Value and limit in amperes.</summary>
    FieldLost = 8,

    /// <summary>The supply was low for longer than a dip may last. Value and limit in volts.</summary>
    SupplyLow = 9,

    /// <summary>The supply was high for longer than it may be. Value and limit in volts.</summary>
    SupplyHigh = 10,

    /// <summary>The thermal image of the motor reached its limit. Value: armature current; limit: the current setting, in amperes.</summary>
    Overload = 11,

    /// <summary>The start took longer than it may. Value: stage; limit in seconds.</summary>
    SequenceIncomplete = 12,

    /// <summary>Current flowed and the shaft stood for longer than it may. Value and limit in amperes.</summary>
    Stalled = 13,

    /// <summary>The speed was unknown for longer than it may be.</summary>
    SpeedSignalLost = 14,

    /// <summary>Back-EMF from speed and from the voltage equation differ. Value: the difference; limit: permitted, in volts.</summary>
    BackEmfDisagreement = 15,

    /// <summary>The shaft turned too fast. Value and limit in rad/s.</summary>
    Overspeed = 16,

    /// <summary>The shaft turned against the start while the line was closed. Value and limit in rad/s.</summary>
    ReverseRotation = 17,

    /// <summary>The starting resistor got too hot: by its image in joules, or by its sensor in degC.</summary>
    ResistorTooHot = 18,

    /// <summary>A required permissive was withdrawn. Value: bits that are given; limit: bits that are required.</summary>
    PermissiveLost = 19,

    /// <summary>The time between two ticks was too long while a coil was on. Value and limit in seconds.</summary>
    LoopLate = 20,

    /// <summary>The settings failed their check. Value: the first <see cref="SettingId"/> that is not usable.</summary>
    SettingsInvalid = 21,

    /// <summary>The brake did not bring the shaft to its release speed in time. Value: speed; limit: release speed, in rad/s.</summary>
    BrakeDidNotFinish = 22,

    /// <summary>Current flowed while every contact said open. Value and limit in amperes.</summary>
    CurrentWhileOpen = 23,

    /// <summary>After a closing the current showed another resistance than the designed one. Value and limit: current seen and expected, in amperes.</summary>
    SectionDrifted = 24,
}
