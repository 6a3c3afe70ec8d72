using System;

namespace StarterCtl.Engine.Runs;

/// <summary>A quantity that stands still or goes to a value in a straight line over time.</summary>
internal struct Ramp(double value)
{
    private double _from = value;
    private double _to = value;
    private double _beginSeconds;

    /// <summary>When it arrives, s; infinity while it stands still.</summary>
    public double EndSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>True on the way.</summary>
    public readonly bool Moves => double.IsFinite(EndSeconds);

    /// <summary>Its value at a time.</summary>
    public readonly double At(double seconds) =>
        Moves ? _from + (_to - _from) * Math.Clamp((seconds - _beginSeconds) / (EndSeconds - _beginSeconds), 0, 1) : _to;

    /// <summary>Sends it to a value, from where it is.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="nowSeconds">Since when, s.</param>
    /// <param name="overSeconds">For how long, s; 0: it jumps.</param>
    public void Go(double to, double nowSeconds, double overSeconds)
    {
        _from = At(nowSeconds);
        _to = to;
        _beginSeconds = nowSeconds;
        EndSeconds = overSeconds > 0 ? nowSeconds + overSeconds : double.PositiveInfinity;
    }

    /// <summary>Lets it stand still where it has arrived.</summary>
    public void Settle(double nowSeconds)
    {
        if (EndSeconds <= nowSeconds) EndSeconds = double.PositiveInfinity;
    }
}
