using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>What a board's memory holds.</summary>
/// <param name="Settings">What was found of the settings; without sound ones the controller stays not set up.</param>
/// <param name="Calibration">What was found of the calibration.</param>
/// <param name="ResetCause">Why the board began anew.</param>
/// <param name="FormerResetCause">Why it did the time before.</param>
/// <param name="WatchdogResets">Watchdog resets in a row.</param>
/// <param name="StartLock">Why starting is locked out.</param>
public sealed record BoardMemoryState(
    StoreState Settings, StoreState Calibration, ResetCause ResetCause, ResetCause FormerResetCause, int WatchdogResets, StartLockReason StartLock)
{
    internal static BoardMemoryState Of(MemoryAnswer answer) => new(
        answer.SettingsState, answer.CalibrationState, answer.ResetCause, answer.FormerResetCause, answer.WatchdogResets, answer.StartLock);
}
