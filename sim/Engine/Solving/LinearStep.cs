using System;

namespace StarterCtl.Engine.Solving;

/// <summary>The exact next current and speed of a linear regime over one span of time, as fixed forms of (Ia, w, 1).</summary>
/// <remarks>
/// Built by Taylor series on a span short enough for it and then by doubling, which stays exact where the circuit is stiff; a
/// difference of exponentials does not. What is kept is the change over the span. Textbook linear algebra; derived here.
/// </remarks>
public sealed class LinearStep
{
    private readonly double _ampsByAmps, _ampsBySpeed, _ampsConstant;
    private readonly double _speedByAmps, _speedBySpeed, _speedConstant;

    /// <summary>Solves a linear regime over a span.</summary>
    /// <param name="regime">The regime.</param>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public LinearStep(Regime regime, double seconds)
    {
        Seconds = seconds;
        Span<double> a = stackalloc double[6];
        Span<double> change = stackalloc double[6];
        regime.LinearRows(a);
        int doublings = LinearSeries.Doublings(a, seconds);
        LinearSeries.Change(a, seconds / Math.Pow(2, doublings), change);
        for (int i = 0; i < doublings; i++) LinearSeries.Double(change);
        _ampsByAmps = change[0];
        _ampsBySpeed = change[1];
        _ampsConstant = change[2];
        _speedByAmps = change[3];
        _speedBySpeed = change[4];
        _speedConstant = change[5];
    }

    /// <summary>Span of this step, s.</summary>
    public double Seconds { get; }

    /// <summary>Moves a state over the span.</summary>
    public void Apply(ref double amps, ref double speed)
    {
        double i = amps, w = speed;
        amps = i + (_ampsByAmps * i + _ampsBySpeed * w + _ampsConstant);
        speed = w + (_speedByAmps * i + _speedBySpeed * w + _speedConstant);
    }
}
