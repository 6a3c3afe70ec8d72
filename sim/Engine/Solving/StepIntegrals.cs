using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Integrals over a span of time from which every energy of the run follows.</summary>
public struct StepIntegrals
{
    /// <summary>Integral of the current, A s.</summary>
    public double AmpSeconds;

    /// <summary>Integral of the current squared, A2 s.</summary>
    public double SquareAmpSeconds;

    /// <summary>Integral of the speed, rad.</summary>
    public double Radians;

    /// <summary>Integral of the speed squared, rad2/s.</summary>
    public double SquareSpeedSeconds;

    /// <summary>Integral of the speed's magnitude cubed, rad3/s2.</summary>
    public double CubeSpeedSeconds;

    /// <summary>Adds a step by the corrected trapezoid: order 4, from values and slopes at both ends.</summary>
    /// <param name="regime">The regime that holds over the step.</param>
    /// <param name="h">Span, s.</param>
    /// <param name="amps0">Current at the beginning, A.</param>
    /// <param name="speed0">Speed at the beginning, rad/s.</param>
    /// <param name="amps1">Current at the end, A.</param>
    /// <param name="speed1">Speed at the end, rad/s.</param>
    internal void AddTrapezoid(Regime regime, double h, double amps0, double speed0, double amps1, double speed1)
    {
        double slope0 = regime.AmpsSlope(amps0, speed0), slope1 = regime.AmpsSlope(amps1, speed1);
        double acceleration0 = regime.Acceleration(amps0, speed0), acceleration1 = regime.Acceleration(amps1, speed1);
        double half = h / 2, twelfth = h * h / 12;
        double w0 = Math.Abs(speed0), w1 = Math.Abs(speed1), turn = regime.Rotation;
        AmpSeconds += half * (amps0 + amps1) + twelfth * (slope0 - slope1);
        SquareAmpSeconds += half * (amps0 * amps0 + amps1 * amps1) + twelfth * 2 * (amps0 * slope0 - amps1 * slope1);
        Radians += half * (speed0 + speed1) + twelfth * (acceleration0 - acceleration1);
        SquareSpeedSeconds += half * (w0 * w0 + w1 * w1) + twelfth * 2 * (speed0 * acceleration0 - speed1 * acceleration1);
        CubeSpeedSeconds += half * (w0 * w0 * w0 + w1 * w1 * w1)
            + twelfth * 3 * turn * (w0 * w0 * acceleration0 - w1 * w1 * acceleration1);
    }
}
