namespace StarterCtl.Firmware;

/// <summary>
/// Why the board does not let the controller begin. Numbers are published and never reused; the tripped lamp flashes them.
/// </summary>
public enum PowerUpProblem
{
    /// <summary>It does.</summary>
    None = 0,

    /// <summary>What is there has not stood for its time yet. Value: seconds left.</summary>
    Proving = 1,

    /// <summary>The controller does something else here than at the desk. Value: the number that its course came to, as far as a float holds it.</summary>
    BootCheckFailed = 2,

    /// <summary>A setting failed its check. Value: the setting's id.</summary>
    SettingsUnsound = 3,

    /// <summary>The settings are not those that were kept. Value: their checksum, as far as a float holds it.</summary>
    ChecksumWrong = 4,

    /// <summary>The wiring was refused. Value: the board problem's number.</summary>
    WiringRefused = 5,

    /// <summary>The inputs could not be read.</summary>
    NotRead = 6,

    /// <summary>A coil's pin shows the energised level. Value: the role's number.</summary>
    CoilOn = 7,

    /// <summary>A reading is not a number. Value: the core's number of the channel.</summary>
    ReadingUnusable = 8,

    /// <summary>The line contactor is not proven open.</summary>
    LineNotOpen = 9,

    /// <summary>A stage contactor is not proven open. Value: the stage.</summary>
    StageNotOpen = 10,

    /// <summary>The brake contactor is not proven open.</summary>
    BrakeNotOpen = 11,

    /// <summary>The field contactor is not proven open.</summary>
    FieldNotOpen = 12,

    /// <summary>Current flows. Value: amperes.</summary>
    CurrentFlows = 13,

    /// <summary>The speed is not known.</summary>
    SpeedUnknown = 14,

    /// <summary>The shaft turns, and a turning shaft may not be started. Value: rad/s.</summary>
    ShaftTurns = 15,
}
