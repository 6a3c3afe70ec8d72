using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Speed from edges, by period and count together: whole periods between two edges by the time between them. Good from one edge a turn at
/// a crawl, where it is one period, to kilohertz, where it is as many as the shortest span holds. An encoder's counter goes up and down,
/// which gives the direction; a pick-up's edges are looked at by an <see cref="EdgeDoubt"/>.
/// </summary>
/// <remarks>
/// Relative error on a shaft that keeps its direction: resolution of the stamps by the span's time, and single precision (1e-6). About a
/// change of direction: one edge's angle by the span's time. Delay: half a span, which is the shortest one or one period, whichever is
/// longer, and up to one control period. Between edges and at rest: <see cref="SilentShaft"/>.
/// </remarks>
public sealed class EdgeSpeed : ISpeedSource
{
    private const float SecondsPerMicrosecond = 0.000001f;

    private readonly PulseSetup _setup;
    private readonly EdgeDoubt? _doubt;
    private readonly EdgeSpan _span;
    private readonly SilentShaft _shaft;
    private readonly float _radPerEdge;

    /// <summary>Builds it.</summary>
    /// <param name="input">The edges.</param>
    /// <param name="setup">What they are.</param>
    /// <param name="standstill">What holds while none come.</param>
    /// <param name="doubt">What looks for missing and extra edges; none where the count goes up and down.</param>
    public EdgeSpeed(IPulseInput input, PulseSetup setup, StandstillSetup standstill, EdgeDoubt? doubt)
    {
        _setup = setup;
        _doubt = doubt;
        _span = new EdgeSpan(input);
        _shaft = new SilentShaft(setup, standstill);
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
        int edges = _doubt != null ? _doubt.Correct(_span.Edges, seconds) : _span.Edges;
        // Where it cannot be told yet the next edge tells more, and the span goes on.
        if (_doubt == null || edges > 0)
        {
            _shaft.Measured(edges * _radPerEdge / seconds);
            _span.BeginHere();
        }

        if (_doubt == null || !_doubt.IsTooMuch) return;
        _shaft.Lose();
        Forget();
    }

    private void Forget()
    {
        _span.Drop();
        if (_doubt != null) _doubt.Forget();
    }
}
