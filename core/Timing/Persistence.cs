namespace StarterCtl.Core;

/// <summary>Times how long a condition has held without a break.</summary>
public sealed class Persistence
{
    private const int NotHeld = -1;

    private int _microseconds = NotHeld;

    /// <summary>True on the tick on which the condition has held for a time; with 0 on its first tick.</summary>
    /// <param name="condition">Whether it holds on this tick.</param>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="limitMicroseconds">How long it must hold.</param>
    public bool Lasts(bool condition, int elapsedMicroseconds, int limitMicroseconds)
    {
        if (!condition)
        {
            _microseconds = NotHeld;
            return false;
        }

        _microseconds = _microseconds == NotHeld ? 0 : Elapsed.Add(_microseconds, elapsedMicroseconds);
        return _microseconds >= limitMicroseconds;
    }

    /// <summary>True if the condition held on the last tick.</summary>
    public bool IsHeld => _microseconds != NotHeld;

    /// <summary>Time left until it has held for long enough, microseconds.</summary>
    public int MicrosecondsLeft(int limitMicroseconds) => limitMicroseconds - (_microseconds == NotHeld ? 0 : _microseconds);
}
