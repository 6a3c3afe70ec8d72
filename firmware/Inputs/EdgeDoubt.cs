using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Finds missing and extra edges of a pick-up that counts in one direction only, and puts them right.</summary>
/// <remarks>
/// A single missing or extra edge is put right where the shaft cannot have changed its speed so fast, that is while its highest
/// acceleration explains less than half an edge. One that falls so near a true edge that it cannot be told from it costs up to two
/// thirds of a period in the count of a span, and what that acceleration explains. Spacing may be uneven by 30 %. More than four
/// doubtful edges in a row make the speed unknown until two edges are in order again. A fault that is there from the beginning on every
/// turn, such as each pulse counted twice, cannot be seen here; the core's back-EMF disagreement sees it.
/// </remarks>
public sealed class EdgeDoubt
{
    private const int MostDoubtful = 4;
    private const float PeriodTolerance = 0.3f;
    private const float Undecidable = 0.5f;
    private const float RecentPart = 0.25f;
    // By so many spans the mean of the recent speeds lags.
    private const float RecentSpans = 3f;

    private readonly PulseSetup _setup;
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
    public EdgeDoubt(PulseSetup setup)
    {
        _setup = setup;
        _radPerEdge = setup.RadPerEdge;
    }

    /// <summary>True if too many edges in a row were in doubt.</summary>
    public bool IsTooMuch => _doubtful > MostDoubtful;

    /// <summary>Looks at a span.</summary>
    /// <param name="found">Edges that were counted in it.</param>
    /// <param name="seconds">Its time.</param>
    /// <returns>The edges that a true shaft gave in it; 0 where that cannot be told yet.</returns>
    public int Correct(int found, float seconds)
    {
        float expected = 0f;
        float explained = Undecidable;
        if (_hasRecent && _radPerEdge > 0f)
        {
            expected = _recentRadPerSec * seconds / _radPerEdge;
            float apartSeconds = RecentSpans * _lastSpanSeconds + 0.5f * (_lastSpanSeconds + seconds);
            explained = _setup.HighestRadPerSecSquared * apartSeconds * seconds / _radPerEdge;
        }

        int edges = Corrected(found, expected, explained);
        if (edges == found) _doubtful = 0;
        else _doubtful++;
        if (edges > 0)
        {
            if (edges < found) ExtraEdges = unchecked(ExtraEdges + 1);
            if (edges > found) MissingEdges = unchecked(MissingEdges + 1);
            Remember(edges * _radPerEdge / seconds, seconds, explained);
        }

        return edges;
    }

    /// <summary>Forgets the edges so far.</summary>
    public void Forget()
    {
        _hasRecent = false;
        _doubtful = 0;
    }

    private static int Corrected(int edges, float expected, float explained)
    {
        if (explained >= Undecidable) return edges;
        float excess = edges - expected;
        int corrected = excess > Undecidable ? edges - 1 : excess < -Undecidable ? edges + 1 : edges;
        // A single period is judged more closely, for there the next edge still tells which of the two was the wrong one.
        float most = explained + (edges == 1 && corrected == 1 ? PeriodTolerance : Undecidable);
        return Magnitude.Of(corrected - expected) <= most ? corrected : 0;
    }

    private void Remember(float radPerSec, float seconds, float explained)
    {
        if (explained >= Undecidable) _recentRadPerSec = radPerSec;
        else _recentRadPerSec += (radPerSec - _recentRadPerSec) * RecentPart;
        _hasRecent = true;
        _lastSpanSeconds = seconds;
    }
}
