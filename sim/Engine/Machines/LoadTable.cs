using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// A passive load torque measured point by point over the speed. Between the points a smooth curve that rises and falls only where
/// they do; beyond the last speed its torque is held.
/// </summary>
public sealed class LoadTable
{
    private readonly double _standstillSlope;

    /// <summary>Takes the points.</summary>
    /// <param name="radPerSec">Speed of each point, rad/s; two or more, the first 0, rising strictly.</param>
    /// <param name="newtonMetres">Torque of each point, N m, 0 or more.</param>
    /// <exception cref="ArgumentException">The points are no such table.</exception>
    public LoadTable(IReadOnlyList<double> radPerSec, IReadOnlyList<double> newtonMetres)
    {
        Curve = new PointCurve(radPerSec, newtonMetres);
        if (radPerSec[0] != 0) throw new ArgumentException("A load table begins at rest.", nameof(radPerSec));
        foreach (double torque in newtonMetres)
        {
            if (torque < 0) throw new ArgumentException("A load table opposes rotation: no torque is below 0.", nameof(newtonMetres));
        }

        Curve.At(0, out _standstillSlope);
    }

    /// <summary>The curve: torque, N m, over the magnitude of the speed, rad/s.</summary>
    public PointCurve Curve { get; }

    /// <summary>Torque at rest, N m: up to it the shaft is held.</summary>
    public double StandstillNewtonMetres => Curve.Ys[0];

    /// <summary>Last speed that the table knows, rad/s.</summary>
    public double LastRadPerSec => Curve.Xs[^1];

    /// <summary>Torque of the last point, N m, which is held beyond it.</summary>
    public double LastNewtonMetres => Curve.Ys[^1];

    /// <summary>Torque at a speed, N m, and how it changes with it. Goes straight on below 0, for a method that looks past a standstill.</summary>
    /// <param name="radPerSec">Speed in the direction of rotation, rad/s.</param>
    /// <param name="slope">Change per speed, N m s/rad.</param>
    public double At(double radPerSec, out double slope)
    {
        if (radPerSec >= 0) return Curve.At(radPerSec, out slope);
        slope = _standstillSlope;
        return StandstillNewtonMetres + _standstillSlope * radPerSec;
    }
}
