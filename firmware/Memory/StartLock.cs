using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// A board that starts nothing while its memory speaks against it. Stands next to the board itself, inside any link: then its
/// reset is the one that is wired, and a start over the link is locked out as well.
/// </summary>
/// <remarks>
/// While locked the start input counts as held: that is no press, the controller refuses with <see cref="Refusal.StartHeld"/>, and a
/// button that really is held when the lock ends starts nothing.
/// </remarks>
public sealed class StartLock : IBoard
{
    private readonly IBoard _board;
    private readonly ResetMemory _resets;
    private readonly CalibrationStore _calibration;
    // Before it was seen released, a held button is no press.
    private bool _wasResetPressed = true;

    /// <summary>Puts the lock before a board.</summary>
    public StartLock(IBoard board, ResetMemory resets, CalibrationStore calibration)
    {
        _board = board;
        _resets = resets;
        _calibration = calibration;
    }

    /// <summary>Why starting is locked out.</summary>
    public StartLockReason Reason =>
        _resets.IsLockedOut ? StartLockReason.WatchdogResets : _calibration.IsUsable ? StartLockReason.None : StartLockReason.CalibrationLost;

    /// <inheritdoc/>
    public int MicrosecondCounter() => _board.MicrosecondCounter();

    /// <inheritdoc/>
    public bool TryRead(Readings readings)
    {
        if (!_board.TryRead(readings)) return false;
        if (readings.ResetPressed && !_wasResetPressed && _resets.IsLockedOut) _resets.Clear();
        _wasResetPressed = readings.ResetPressed;
        if (Reason != StartLockReason.None) readings.StartPressed = true;
        return true;
    }

    /// <inheritdoc/>
    public void Write(Outputs outputs) => _board.Write(outputs);
}
