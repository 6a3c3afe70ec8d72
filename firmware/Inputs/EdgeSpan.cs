using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Whole periods between two edges: the count says how many, the stamps how long. Handles the wrap of either.</summary>
public sealed class EdgeSpan
{
    private readonly IPulseInput _input;
    private readonly EdgeMark _mark = new EdgeMark();
    private int _lastEdges;
    private int _beginMicroseconds;
    private bool _hasBegun;
    private bool _isRead;

    /// <summary>Edges since the span began; negative backwards.</summary>
    public int Edges;

    /// <summary>Time from the edge at which the span began to the last one, microseconds.</summary>
    public int Microseconds;

    /// <summary>True if there was an edge since the last reading.</summary>
    public bool HasEdge;

    /// <summary>Time since the last edge, microseconds; before the first one since the first reading. Stops at the timers' ceiling.</summary>
    public int SinceEdgeMicroseconds;

    /// <summary>Builds it.</summary>
    public EdgeSpan(IPulseInput input)
    {
        _input = input;
    }

    /// <summary>Reads the input.</summary>
    /// <param name="nowMicroseconds">The board's counter, by which edges are stamped.</param>
    /// <param name="elapsedMicroseconds">Clamped time since the last reading.</param>
    public void Update(int nowMicroseconds, int elapsedMicroseconds)
    {
        _input.Read(_mark);
        if (!_isRead) _lastEdges = _mark.Edges;
        _isRead = true;
        int newEdges = unchecked(_mark.Edges - _lastEdges);
        _lastEdges = _mark.Edges;
        HasEdge = newEdges != 0;
        if (!HasEdge)
        {
            SinceEdgeMicroseconds = Elapsed.Add(SinceEdgeMicroseconds, elapsedMicroseconds);
            return;
        }

        SinceEdgeMicroseconds = Elapsed.Clamp(unchecked(nowMicroseconds - _mark.LastEdgeMicroseconds));
        if (!_hasBegun)
        {
            BeginHere();
            return;
        }

        Edges = unchecked(Edges + newEdges);
        Microseconds = Elapsed.Clamp(unchecked(_mark.LastEdgeMicroseconds - _beginMicroseconds));
    }

    /// <summary>The last edge ends this span and begins the next.</summary>
    public void BeginHere()
    {
        _hasBegun = true;
        _beginMicroseconds = _mark.LastEdgeMicroseconds;
        Edges = 0;
        Microseconds = 0;
    }

    /// <summary>Drops the span; the next edge begins another.</summary>
    public void Drop()
    {
        _hasBegun = false;
        Edges = 0;
        Microseconds = 0;
    }
}
