using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// What is known of the speed between edges. While none comes the shaft turns no faster than one edge in the time since the last, and
/// has not slowed down by more than it can: the speed shown is the measured one, brought down to the larger of the two. So a shaft
/// that slows down is never shown faster than one edge's worth, and one missing edge costs next to nothing.
/// </summary>
/// <remarks>
/// Unknown after the time-out, or once four edges are missing that even the fastest stop would have brought. Zero only without an
/// edge for the standstill time and without current; from there a current that comes finds the shaft at rest until the time-out.
/// </remarks>
public sealed class SilentShaft
{
    private const float MissedEdges = 4f;
    private const float SecondsPerMicrosecond = 0.000001f;

    private readonly PulseSetup _setup;
    private readonly StandstillSetup _standstill;
    private readonly float _radPerEdge;
    private readonly Persistence _withoutCurrent = new Persistence();
    private float _measured;
    private int _knownMicroseconds;

    /// <summary>Speed now, rad/s, of the measured one's sign.</summary>
    public float RadPerSec;

    /// <summary>True while it is known.</summary>
    public bool IsValid;

    /// <summary>True if on this tick the edges so far have lost their meaning: the shaft stands, or the speed has just become unknown.</summary>
    public bool IsForgotten;

    /// <summary>Builds it.</summary>
    public SilentShaft(PulseSetup setup, StandstillSetup standstill)
    {
        _setup = setup;
        _standstill = standstill;
        _radPerEdge = setup.RadPerEdge;
    }

    /// <summary>A speed has been measured.</summary>
    public void Measured(float radPerSec)
    {
        _measured = radPerSec;
        IsValid = true;
    }

    /// <summary>The speed has become unknown.</summary>
    public void Lose() => IsValid = false;

    /// <summary>Works out what is known now.</summary>
    /// <param name="span">Edges, read on this tick.</param>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="armatureAmps">Armature current, A.</param>
    public void Update(EdgeSpan span, int elapsedMicroseconds, float armatureAmps)
    {
        bool isStill = !span.HasEdge && Magnitude.Of(armatureAmps) <= _standstill.ZeroAmps;
        bool stands = _withoutCurrent.Lasts(isStill, elapsedMicroseconds, _standstill.StandstillMicroseconds);
        if (stands) Measured(0f);
        if (stands || span.HasEdge) _knownMicroseconds = stands ? 0 : span.SinceEdgeMicroseconds;
        else _knownMicroseconds = Elapsed.Add(_knownMicroseconds, elapsedMicroseconds);

        RadPerSec = 0f;
        IsForgotten = stands || span.SinceEdgeMicroseconds > _standstill.TimeOutMicroseconds;
        if (!IsValid) return;
        float measured = Magnitude.Of(_measured);
        float slowest = measured - _setup.HighestRadPerSecSquared * (_knownMicroseconds * SecondsPerMicrosecond);
        float turned = _knownMicroseconds * SecondsPerMicrosecond * (slowest > 0f ? slowest : 0f);
        if (_knownMicroseconds > _standstill.TimeOutMicroseconds || turned > MissedEdges * _radPerEdge)
        {
            Lose();
            IsForgotten = true;
            return;
        }

        RadPerSec = _measured < 0f ? -Bounded(measured, slowest) : Bounded(measured, slowest);
    }

    private float Bounded(float measured, float slowest)
    {
        float bound = _knownMicroseconds > 0 ? _radPerEdge / (_knownMicroseconds * SecondsPerMicrosecond) : measured;
        if (bound < slowest) bound = slowest;
        return bound < measured ? bound : measured;
    }
}
