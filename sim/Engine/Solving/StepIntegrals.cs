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

    /// <summary>Integral of the field current, A s.</summary>
    public double FieldAmpSeconds;

    /// <summary>Integral of the field current squared, A2 s.</summary>
    public double SquareFieldAmpSeconds;

    /// <summary>Integral of the product of both currents, A2 s.</summary>
    public double BothAmpSeconds;

    /// <summary>Integral of the power that the load's table takes, J.</summary>
    public double TableJoules;

    /// <summary>Adds a node of a quadrature.</summary>
    /// <param name="weight">Its weight, s.</param>
    /// <param name="amps">Armature current there, A.</param>
    /// <param name="speed">Speed there, rad/s.</param>
    /// <param name="fieldAmps">Field current there, A.</param>
    internal void Add(double weight, double amps, double speed, double fieldAmps)
    {
        double magnitude = Math.Abs(speed);
        AmpSeconds += weight * amps;
        SquareAmpSeconds += weight * amps * amps;
        Radians += weight * speed;
        SquareSpeedSeconds += weight * speed * speed;
        CubeSpeedSeconds += weight * magnitude * magnitude * magnitude;
        FieldAmpSeconds += weight * fieldAmps;
        SquareFieldAmpSeconds += weight * fieldAmps * fieldAmps;
        BothAmpSeconds += weight * amps * fieldAmps;
    }

    /// <summary>Adds what a field current that stands still makes of a span of the armature's.</summary>
    internal void AddSteadyField(double fieldAmps, double seconds)
    {
        FieldAmpSeconds = fieldAmps * seconds;
        SquareFieldAmpSeconds = fieldAmps * fieldAmps * seconds;
        BothAmpSeconds = fieldAmps * AmpSeconds;
    }
}
