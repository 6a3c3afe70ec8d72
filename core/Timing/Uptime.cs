namespace StarterCtl.Core;

/// <summary>Time since the controller was built, in seconds; stops at the largest int, 68 years.</summary>
public sealed class Uptime
{
    private const int MicrosecondsPerSecond = 1000000;

    private int _microseconds;

    /// <summary>Whole seconds.</summary>
    public int Seconds;

    /// <summary>Goes on.</summary>
    /// <param name="clampedMicroseconds">Clamped time since the last tick.</param>
    public void Advance(int clampedMicroseconds)
    {
        // Both terms are below their ceilings, so that the sum fits.
        _microseconds += clampedMicroseconds;
        if (_microseconds < MicrosecondsPerSecond) return;
        int seconds = _microseconds / MicrosecondsPerSecond;
        _microseconds -= seconds * MicrosecondsPerSecond;
        Seconds = Seconds > int.MaxValue - seconds ? int.MaxValue : Seconds + seconds;
    }
}
