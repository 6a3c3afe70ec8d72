namespace StarterCtl.Firmware;

/// <summary>What the memory holds of the board, in one place for a display or the link.</summary>
public sealed class MemoryReport
{
    private readonly SettingsStore _settings;
    private readonly CalibrationStore _calibration;
    private readonly ResetMemory _resets;
    private readonly StartLock _lock;

    /// <summary>Builds it over what the board keeps.</summary>
    public MemoryReport(SettingsStore settings, CalibrationStore calibration, ResetMemory resets, StartLock startLock)
    {
        _settings = settings;
        _calibration = calibration;
        _resets = resets;
        _lock = startLock;
    }

    /// <summary>Writes how things stand now.</summary>
    public void Fill(MemoryAnswer answer)
    {
        answer.SettingsState = _settings.State;
        answer.CalibrationState = _calibration.State;
        answer.ResetCause = _resets.Cause;
        answer.FormerResetCause = _resets.FormerCause;
        answer.WatchdogResets = _resets.WatchdogResets;
        answer.StartLock = _lock.Reason;
    }
}
