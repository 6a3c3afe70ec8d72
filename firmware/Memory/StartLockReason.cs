namespace StarterCtl.Firmware;

/// <summary>Why the board's memory locks starting out. Numbers are published and never reused.</summary>
public enum StartLockReason
{
    /// <summary>It does not.</summary>
    None = 0,

    /// <summary>Too many watchdog resets in a row, or their count was lost; ends by a press of reset at the board.</summary>
    WatchdogResets = 1,

    /// <summary>There was a calibration that cannot be read back; ends when a channel is calibrated anew.</summary>
    CalibrationLost = 2,
}
