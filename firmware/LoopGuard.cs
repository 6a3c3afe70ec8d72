using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>What stands around the control loop on a board: its rate, its watchdog, and the lock at power-up.</summary>
public sealed class LoopGuard
{
    private readonly WatchdogPulse? _watchdog;
    private readonly FlashCode _flashes = new FlashCode();

    /// <summary>The loop's rate.</summary>
    public readonly LoopTiming Timing;

    /// <summary>The lock at power-up.</summary>
    public readonly PowerUpCheck PowerUp;

    /// <summary>Builds it.</summary>
    /// <param name="timing">The loop's rate.</param>
    /// <param name="watchdog">The pulse; none where no watchdog is wired.</param>
    /// <param name="powerUp">The lock at power-up.</param>
    public LoopGuard(LoopTiming timing, WatchdogPulse? watchdog, PowerUpCheck powerUp)
    {
        Timing = timing;
        _watchdog = watchdog;
        PowerUp = powerUp;
    }

    /// <summary>Whether the controller runs on this period. While it does not, every output is off and the lamp says why.</summary>
    /// <param name="elapsedMicroseconds">Time since the last period.</param>
    /// <param name="readings">Readings of this one.</param>
    /// <param name="outputs">Receives what is to be written while it is locked.</param>
    public bool Admits(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        PowerUp.Update(elapsedMicroseconds, readings);
        if (PowerUp.IsOpen) return true;
        outputs.StayOff(_flashes.IsLit((int)PowerUp.Problem, Elapsed.Clamp(elapsedMicroseconds)));
        return false;
    }

    /// <summary>The outputs are written: ends the period.</summary>
    public void Finish(int nowMicroseconds)
    {
        bool isOnTime = Timing.Finish(nowMicroseconds);
        _watchdog?.Finish(isOnTime);
    }
}
