using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Says when a sample is due.</summary>
public sealed class TelemetryClock
{
    /// <summary>Shortest time between samples, microseconds.</summary>
    public const int ShortestMicroseconds = 1000;

    /// <summary>Longest time between samples, microseconds.</summary>
    public const int LongestMicroseconds = 60000000;

    private int _periodMicroseconds;
    private int _sinceMicroseconds;

    /// <summary>Sets the time between samples; the first is due one period later.</summary>
    /// <param name="periodMicroseconds">Microseconds; 0 for no samples.</param>
    /// <returns>False if it is outside the range; then nothing changes.</returns>
    public bool TrySet(int periodMicroseconds)
    {
        bool isInRange = periodMicroseconds >= ShortestMicroseconds && periodMicroseconds <= LongestMicroseconds;
        if (!isInRange && periodMicroseconds != 0) return false;
        _periodMicroseconds = periodMicroseconds;
        _sinceMicroseconds = 0;
        return true;
    }

    /// <summary>True on the control period on which a sample is due.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call.</param>
    public bool IsDue(int elapsedMicroseconds)
    {
        if (_periodMicroseconds == 0) return false;
        _sinceMicroseconds = Elapsed.Add(_sinceMicroseconds, Elapsed.Clamp(elapsedMicroseconds));
        if (_sinceMicroseconds < _periodMicroseconds) return false;
        // What is over counts for the next one, so that the rate holds; a whole period over is lost.
        _sinceMicroseconds -= _periodMicroseconds;
        if (_sinceMicroseconds >= _periodMicroseconds) _sinceMicroseconds = 0;
        return true;
    }
}
