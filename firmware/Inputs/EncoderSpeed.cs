using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Speed and direction from a counter that an encoder moves up and down: edges of a span times the angle between two, by the time
/// between the first and the last.
/// </summary>
/// <remarks>
/// Relative error on a shaft that keeps its direction: resolution of the stamps by the span's time, and single precision (1e-6). About
/// a change of direction: one edge's angle by the span's time. Delay: half a span, which is the shortest one or one edge's period,
/// whichever is longer, and up to one control period. Between edges and at rest: <see cref="SilentShaft"/>.
/// </remarks>
public sealed class EncoderSpeed : ISpeedSource
{
    private const float MicrosecondsPerSecond = 1000000f;

    private readonly PulseSetup _setup;
    private readonly EdgeSpan _span;
    private readonly SilentShaft _shaft;
    private readonly float _radPerEdge;

    /// <summary>Builds it.</summary>
    public EncoderSpeed(IPulseInput input, PulseSetup setup)
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
        if (_span.HasEdge && _span.Microseconds >= _setup.ShortestSpanMicroseconds && _span.Microseconds > 0)
        {
            _shaft.Measured(_span.Edges * _radPerEdge * MicrosecondsPerSecond / _span.Microseconds);
            _span.BeginHere();
        }

        _shaft.Update(_span, elapsedMicroseconds, armatureAmps);
        if (_shaft.IsForgotten) _span.Drop();
    }
}
