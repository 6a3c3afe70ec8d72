namespace StarterCtl.Core;

/// <summary>Timers that count up in microseconds and stop at a ceiling, so that nothing wraps.</summary>
public static class Elapsed
{
    /// <summary>Ceiling of every timer, microseconds; one more tick of the same size still fits an int.</summary>
    public const int Ceiling = Settings.LongestMicroseconds;

    /// <summary>Makes any elapsed time usable: negative becomes 0, hours become the ceiling.</summary>
    public static int Clamp(int elapsedMicroseconds)
    {
        if (elapsedMicroseconds < 0) return 0;
        return elapsedMicroseconds > Ceiling ? Ceiling : elapsedMicroseconds;
    }

    /// <summary>Adds a clamped elapsed time to a timer.</summary>
    public static int Add(int timerMicroseconds, int clampedMicroseconds)
    {
        int sum = timerMicroseconds + clampedMicroseconds;
        return sum > Ceiling ? Ceiling : sum;
    }
}
