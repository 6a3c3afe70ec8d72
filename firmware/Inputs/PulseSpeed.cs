using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Speed from a pick-up's pulses, by period and count together: whole periods between two edges by the time between them. Good from
/// one pulse a turn at a crawl, where it is one period, to kilohertz, where it is as many as the shortest span holds. Without direction.
/// </summary>
/// <remarks>
/// Relative error: resolution of the stamps by the span's time, and single precision (1e-6). Delay: half a span, which is the shortest
/// one or one period, whichever is longer, and up to one control period. Between edges and at rest: <see cref="SilentShaft"/>.
/// A single missing or extra edge is put right where the shaft cannot have changed its speed so fast, that is while its highest
/// acceleration explains less than half an edge. One that falls so near a true edge that it cannot be told from it costs up to two
/// thirds of a period in the count of a span, and what that acceleration explains. Spacing may be uneven by 30 %. More than four doubtful edges in a row make the speed unknown until two
/// edges are in order again. A fault that is there from the beginning on every turn, such as each pulse counted twice, cannot be seen
/// here; the core's back-EMF disagreement sees it.
/// </remarks>
public sealed class PulseSpeed : ISpeedSource
{
    private const int MostDoubtful = 4;
    private const float PeriodTolerance = 0.3f;
    private const float Undecidable = 0.5f;
    private const float RecentPart = 0.25f;
    // By so many spans the mean of the recent speeds lags.
    private const float RecentSpans = 3f;
    private const float SecondsPerMicrosecond = 0.000001f;

    private readonly PulseSetup _setup;
    private readonly EdgeSpan _span;
    private readonly SilentShaft _shaft;
    private readonly float _radPerEdge;
    private float _recentRadPerSec;
    private float _lastSpanSeconds;
    private int _doubtful;
    private bool _hasRecent;

    /// <summary>Missing edges that were put right; wraps.</summary>
    public int MissingEdges;

    /// <summary>Extra edges that were put right; wraps.</summary>
    public int ExtraEdges;

    /// <summary>Builds it.</summary>
    public PulseSpeed(IPulseInput input, PulseSetup setup)
    {
        _setup = setup;
        _span = new EdgeSpan(input);
        _shaft = new SilentShaft(setup);
        _radPerEdge = setup.RadPerEdge;
    }

    /// <inheritdoc/>
    public float RadPerSec => _shaft.RadPerSec;

    /// <inheritdoc/>
    public bool IsValid => _shaft.IsValid;

    /// <inheritdoc/>
    public void Update(int nowMicroseconds, int elapsedMicroseconds, float armatureAmps)
    {
        elapsedMicroseconds = Elapsed.Clamp(elapsedMicroseconds);
        _span.Update(nowMicroseconds, elapsedMicroseconds);
        if (_span.HasEdge && _span.Microseconds >= _setup.ShortestSpanMicroseconds && _span.Microseconds > 0) Measure();
        _shaft.Update(_span, elapsedMicroseconds, armatureAmps);
        if (_shaft.IsForgotten) Forget();
    }

    private void Measure()
    {
        float seconds = _span.Microseconds * SecondsPerMicrosecond;
        float expected = 0f;
        float explained = Undecidable;
        if (_hasRecent && _radPerEdge > 0f)
        {
            expected = _recentRadPerSec * seconds / _radPerEdge;
            float apartSeconds = RecentSpans * _lastSpanSeconds + 0.5f * (_lastSpanSeconds + seconds);
            explained = _setup.HighestRadPerSecSquared * apartSeconds * seconds / _radPerEdge;
        }

        int edges = Corrected(_span.Edges, expected, explained);
        if (edges == _span.Edges) _doubtful = 0;
        else _doubtful++;
        if (edges > 0)
        {
            if (edges < _span.Edges) ExtraEdges = unchecked(ExtraEdges + 1);
            if (edges > _span.Edges) MissingEdges = unchecked(MissingEdges + 1);
            Accept(edges, seconds, explained);
        }

        // Otherwise the next edge tells more, and the span goes on.
        if (_doubtful <= MostDoubtful) return;
        _shaft.Lose();
        Forget();
    }

    // The edges that a true shaft gave in the span; 0 where that cannot be told yet.
    private static int Corrected(int edges, float expected, float explained)
    {
        if (explained >= Undecidable) return edges;
        float excess = edges - expected;
        int corrected = excess > Undecidable ? edges - 1 : excess < -Undecidable ? edges + 1 : edges;
        // A single period is judged more closely, for there the next edge still tells which of the two was the wrong one.
        float most = explained + (edges == 1 && corrected == 1 ? PeriodTolerance : Undecidable);
        return Magnitude.Of(corrected - expected) <= most ? corrected : 0;
    }

    private void Accept(int edges, float seconds, float explained)
    {
        float speed = edges * _radPerEdge / seconds;
        if (explained >= Undecidable) _recentRadPerSec = speed;
        else _recentRadPerSec += (speed - _recentRadPerSec) * RecentPart;
        _hasRecent = true;
        _lastSpanSeconds = seconds;
        _shaft.Measured(speed);
        _span.BeginHere();
    }

    private void Forget()
    {
        _span.Drop();
        _hasRecent = false;
        _doubtful = 0;
    }
}
