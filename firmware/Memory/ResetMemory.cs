namespace StarterCtl.Firmware;

/// <summary>
/// Remembers why the board began anew, and how often in a row it was the watchdog. After <see cref="MostWatchdogResets"/> of
/// these, each less than <see cref="CleanRunSeconds"/> behind the one before, starting is locked out until somebody at the board
/// presses reset. Neither switching the power off and on nor any other reset clears the count.
/// </summary>
/// <remarks>Both numbers: common practice, no source. A board that cannot count is locked out too.</remarks>
public sealed class ResetMemory
{
    /// <summary>Watchdog resets in a row that lock out.</summary>
    public const int MostWatchdogResets = 3;

    /// <summary>Time without a watchdog reset after which the row is over, s.</summary>
    public const int CleanRunSeconds = 600;

    /// <summary>Version of the content.</summary>
    public const int Version = 1;

    /// <summary>Length of the content, bytes.</summary>
    public const int ContentBytes = 8;

    private const int CauseAt = 4;
    private const int MicrosecondsPerSecond = 1000000;

    private readonly TwoCopyStore _store;
    private int _microseconds;
    private int _seconds;

    /// <summary>Why the board began anew this time.</summary>
    public readonly ResetCause Cause;

    /// <summary>Why it did the time before; unknown on its first.</summary>
    public readonly ResetCause FormerCause;

    /// <summary>Counts this reset.</summary>
    /// <param name="memory">The memory.</param>
    /// <param name="address">First byte of its place, which begins a page.</param>
    /// <param name="cause">Why the board began anew.</param>
    public ResetMemory(INonVolatile memory, int address, ResetCause cause)
    {
        Cause = cause;
        _store = new TwoCopyStore(memory, address, ContentBytes, Version);
        bool isBlank = _store.State == StoreState.Blank;
        bool isFound = _store.State == StoreState.Sound && _store.Content.Length == ContentBytes;
        int former = isFound ? _store.Content.GetInt(0) : isBlank ? 0 : MostWatchdogResets;
        // A number that nobody wrote is no row that is over.
        if (former < 0 || former > MostWatchdogResets) former = MostWatchdogResets;
        FormerCause = isFound ? (ResetCause)_store.Content.GetInt(CauseAt) : ResetCause.Unknown;
        WatchdogResets = cause == ResetCause.Watchdog && former < MostWatchdogResets ? former + 1 : former;
        // What is there already is not written again: memory wears.
        bool isKept = (isFound && WatchdogResets == former && FormerCause == cause) || TrySave(WatchdogResets);
        if (!isKept) WatchdogResets = MostWatchdogResets;
    }

    /// <summary>Watchdog resets in a row, 0 to <see cref="MostWatchdogResets"/>.</summary>
    public int WatchdogResets { get; private set; }

    /// <summary>True while starting is locked out.</summary>
    public bool IsLockedOut => WatchdogResets >= MostWatchdogResets;

    /// <summary>Counts the time, and ends the row behind a clean run; a lock-out it does not end.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call; negative counts as 0.</param>
    /// <param name="isAtRest">True while every coil is off, so that the memory may take its time.</param>
    public void Step(int elapsedMicroseconds, bool isAtRest)
    {
        if (WatchdogResets == 0 || IsLockedOut) return;
        if (_seconds < CleanRunSeconds)
        {
            _microseconds += elapsedMicroseconds < 0 ? 0 : elapsedMicroseconds > MicrosecondsPerSecond ? MicrosecondsPerSecond : elapsedMicroseconds;
            if (_microseconds < MicrosecondsPerSecond) return;
            _microseconds -= MicrosecondsPerSecond;
            _seconds++;
            return;
        }

        if (isAtRest) Clear();
    }

    /// <summary>Ends the row and the lock-out. For a press at the board itself, never for one over a line.</summary>
    /// <returns>False if that could not be kept: then the lock-out stays.</returns>
    public bool Clear()
    {
        if (!TrySave(0)) return false;
        WatchdogResets = 0;
        _seconds = 0;
        return true;
    }

    private bool TrySave(int watchdogResets)
    {
        _store.Content.PutInt(0, watchdogResets);
        _store.Content.PutInt(CauseAt, (int)Cause);
        _store.Content.Length = ContentBytes;
        return _store.TrySave();
    }
}
