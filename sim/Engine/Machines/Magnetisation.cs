using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// Machine constant times flux over an exciting current: a smooth curve through points that rises wherever they do. Behind the
/// last point it stays where it is; below 0 it is the same curve turned about its point at 0, so that the flux reverses.
/// </summary>
public sealed class Magnetisation
{
    /// <summary>Part of the rated constant that stays without field current. Common practice, no source.</summary>
    public const double UsualResidualRatio = 0.03;

    /// <summary>Takes the points of a curve.</summary>
    /// <param name="amps">Exciting current of each point, A; two or more, the first 0, rising strictly.</param>
    /// <param name="constants">Machine constant times flux of each point, V s/rad; above 0, not falling.</param>
    /// <exception cref="ArgumentException">The points are no such curve.</exception>
    public Magnetisation(IReadOnlyList<double> amps, IReadOnlyList<double> constants)
    {
        Curve = new PointCurve(amps, constants);
        if (amps[0] != 0 || !(constants[0] > 0))
        {
            throw new ArgumentException("A magnetisation curve begins at 0 A and lies above 0.", nameof(amps));
        }

        for (int i = 1; i < constants.Count; i++)
        {
            if (constants[i] < constants[i - 1]) throw new ArgumentException("A magnetisation curve does not fall in flux.", nameof(constants));
        }
    }

    /// <summary>The curve above 0: machine constant times flux, V s/rad, over the exciting current, A.</summary>
    public PointCurve Curve { get; }

    /// <summary>Exciting current of each point, A.</summary>
    public IReadOnlyList<double> Amps => Curve.Xs;

    /// <summary>Machine constant times flux of each point, V s/rad.</summary>
    public IReadOnlyList<double> Constants => Curve.Ys;

    /// <summary>Largest exciting current that the curve knows, A.</summary>
    public double LastAmps => Curve.Xs[^1];

    /// <summary>The straight line from what remains without field current to the rated point; it stays there beyond.</summary>
    /// <param name="ratedAmps">Rated field current, A, above 0.</param>
    /// <param name="ratedConstant">Machine constant times flux at that current, V s/rad, above 0.</param>
    /// <param name="residualRatio">Part of the constant that remains without field current, above 0 to 1.</param>
    public static Magnetisation Proportional(double ratedAmps, double ratedConstant, double residualRatio = UsualResidualRatio) =>
        new([0, ratedAmps], [residualRatio * ratedConstant, ratedConstant]);

    /// <summary>Machine constant times flux at an exciting current, V s/rad.</summary>
    /// <param name="amps">Exciting current, A.</param>
    public double ConstantAt(double amps) => At(amps, out _);

    /// <summary>Machine constant times flux at an exciting current, V s/rad, and how it changes with it.</summary>
    /// <param name="amps">Exciting current, A.</param>
    /// <param name="slope">Change per ampere, V s/(rad A).</param>
    public double At(double amps, out double slope) =>
        amps < 0 ? 2 * Curve.Ys[0] - Curve.At(-amps, out slope) : Curve.At(amps, out slope);
}
