namespace StarterCtl.Core;

/// <summary>Counts the starts of the last hour.</summary>
public sealed class StartCounter
{
    private const int SecondsPerHour = 3600;

    private readonly int _mostStarts;
    private readonly Uptime _uptime;
    private readonly int[] _startedAt = new int[Settings.MostStartsPerHour];
    private int _next;
    private int _count;

    /// <summary>Builds an empty count.</summary>
    /// <param name="mostStarts">Starts permitted in an hour; 0 permits any number and counts none.</param>
    /// <param name="uptime">The time.</param>
    public StartCounter(int mostStarts, Uptime uptime)
    {
        _mostStarts = mostStarts;
        _uptime = uptime;
    }

    /// <summary>True while no more starts are permitted.</summary>
    public bool IsFull => _mostStarts > 0 && _count >= _mostStarts && _uptime.Seconds - _startedAt[_next] < SecondsPerHour;

    /// <summary>Counts a start.</summary>
    public void Add()
    {
        if (_mostStarts <= 0) return;
        // The place that comes next holds the start that is as many starts old as are permitted.
        _startedAt[_next] = _uptime.Seconds;
        _next = _next + 1 < _mostStarts ? _next + 1 : 0;
        if (_count < _mostStarts) _count++;
    }
}
