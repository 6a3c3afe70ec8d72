namespace StarterCtl.Firmware;

/// <summary>
/// The fixed rate of the control loop: when a period is due, how late it began, how long it took. Differences of the counter only, so
/// that its wrap does not show. A late period moves those behind it; none is made up for.
/// </summary>
public sealed class LoopTiming
{
    private readonly int _periodMicroseconds;
    private readonly int _lateMicroseconds;
    private int _dueMicroseconds;
    private int _beganMicroseconds;
    private bool _hasBegun;
    private bool _isLate;

    /// <summary>Periods that began later than they may; stops at the largest int.</summary>
    public int LateCount;

    /// <summary>Worst lateness, microseconds.</summary>
    public int WorstLateMicroseconds;

    /// <summary>Longest time from a period's beginning to its end, microseconds.</summary>
    public int WorstTickMicroseconds;

    /// <summary>Builds it.</summary>
    /// <param name="periodMicroseconds">Control period, above 0.</param>
    /// <param name="lateMicroseconds">How much later than its time a period may begin.</param>
    public LoopTiming(int periodMicroseconds, int lateMicroseconds)
    {
        _periodMicroseconds = periodMicroseconds;
        _lateMicroseconds = lateMicroseconds;
    }

    /// <summary>True when the next period is to begin; the first one is at once.</summary>
    public bool IsDue(int nowMicroseconds) => !_hasBegun || unchecked(nowMicroseconds - _dueMicroseconds) >= 0;

    /// <summary>A period begins.</summary>
    public void Begin(int nowMicroseconds)
    {
        int late = _hasBegun ? unchecked(nowMicroseconds - _dueMicroseconds) : 0;
        // Half the counter's range late looks early; no loop is early by more than a period.
        if (late < -_periodMicroseconds) late = int.MaxValue;
        _hasBegun = true;
        _beganMicroseconds = nowMicroseconds;
        _isLate = late > _lateMicroseconds;
        if (late > WorstLateMicroseconds) WorstLateMicroseconds = late;
        if (_isLate && LateCount < int.MaxValue) LateCount++;
        _dueMicroseconds = unchecked((_isLate ? nowMicroseconds : nowMicroseconds - late) + _periodMicroseconds);
    }

    /// <summary>A period ends.</summary>
    /// <returns>True if it began in time and was over before the next is due.</returns>
    public bool Finish(int nowMicroseconds)
    {
        int tick = unchecked(nowMicroseconds - _beganMicroseconds);
        if (tick > WorstTickMicroseconds) WorstTickMicroseconds = tick;
        return !_isLate && tick >= 0 && tick <= _periodMicroseconds;
    }
}
