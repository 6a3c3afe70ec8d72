using System;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// A speed pick-up that gives pulses: all that is known are their edges and when they came. The speed is the angle between the last
/// edges of two ticks over the time between them, and no more than one pitch over the time since the last edge. Without an
/// edge for the timeout, and before two edges, it is unknown; only a shaft that has stood for the timeout, or from the
/// beginning, is known to stand. The direction is not seen: the speed is a magnitude.
/// </summary>
/// <param name="pulsesPerRevolution">Pulses in one revolution, 1 or more.</param>
/// <param name="timeoutSeconds">Time without an edge after which the speed is unknown, s.</param>
public sealed class PulsePickup(int pulsesPerRevolution, double timeoutSeconds)
{
    private readonly double _pitch = 2 * Math.PI / pulsesPerRevolution;
    private double _position;
    private double _trueSpeed;
    private double _lookedSeconds = double.NaN;
    private double _edgeSeconds = double.NaN;
    private double _turnedSeconds = double.NegativeInfinity;
    private double _measured = double.NaN;
    private double _missing;
    private double _extra;

    /// <summary>Part of the pulses that is lost, 0 to 1.</summary>
    public double MissingRatio { get; set; }

    /// <summary>Pulses on top, as a part of the pick-up's own.</summary>
    public double ExtraRatio { get; set; }

    /// <summary>True while the speed is known.</summary>
    public bool IsKnown { get; private set; }

    /// <summary>Speed, rad/s, 0 or more; where it is unknown the last one.</summary>
    public double SpeedRadPerSec { get; private set; }

    /// <summary>Looks at the shaft, whose speed goes in a straight line from one look to the next.</summary>
    /// <param name="now">Time, s.</param>
    /// <param name="speedRadPerSec">Speed of the shaft, rad/s.</param>
    public void Look(double now, double speedRadPerSec)
    {
        double seconds = double.IsNaN(_lookedSeconds) ? 0 : now - _lookedSeconds;
        double turned = (_trueSpeed + speedRadPerSec) / 2 * seconds / _pitch;
        if (speedRadPerSec != 0 || turned != 0) _turnedSeconds = now;
        double before = _position;
        _position += turned;
        _trueSpeed = speedRadPerSec;
        _lookedSeconds = now;
        double edges = Math.Abs(Math.Floor(_position) - Math.Floor(before));
        if (edges > 0 && Counted(edges) is > 0 and double counted)
        {
            double last = turned > 0 ? Math.Floor(_position) : Math.Floor(_position) + 1;
            Measure(counted, now - seconds + seconds * (last - before) / turned);
        }

        Tell(now);
    }

    private void Measure(double counted, double edgeSeconds)
    {
        if (edgeSeconds > _edgeSeconds) _measured = counted * _pitch / (edgeSeconds - _edgeSeconds);
        _edgeSeconds = edgeSeconds;
    }

    // What is lost or added is spread evenly over the pulses.
    private double Counted(double edges)
    {
        _missing += MissingRatio * edges;
        _extra += ExtraRatio * edges;
        double lost = Math.Floor(_missing), added = Math.Floor(_extra);
        _missing -= lost;
        _extra -= added;
        return edges - lost + added;
    }

    private void Tell(double now)
    {
        if (now - _turnedSeconds >= timeoutSeconds)
        {
            _measured = double.NaN;
            _edgeSeconds = double.NaN;
            SpeedRadPerSec = 0;
            IsKnown = true;
            return;
        }

        double silence = now - _edgeSeconds;
        if (silence > timeoutSeconds)
        {
            _measured = double.NaN;
            _edgeSeconds = double.NaN;
        }

        IsKnown = !double.IsNaN(_measured);
        if (IsKnown) SpeedRadPerSec = silence * _measured > _pitch ? _pitch / silence : _measured;
    }
}
