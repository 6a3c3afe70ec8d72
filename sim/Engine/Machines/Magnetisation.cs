using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// Machine constant times flux over the field current: straight lines between points, the last value behind the last point.
/// The controller's own curve has the same form.
/// </summary>
public sealed class Magnetisation
{
    /// <summary>Part of the rated constant that stays without field current. Common practice, no source.</summary>
    public const double UsualResidualRatio = 0.03;

    private readonly double[] _amps;
    private readonly double[] _constants;

    /// <summary>Takes the points of a curve.</summary>
    /// <param name="amps">Field current of each point, A; two or more, the first 0, rising strictly.</param>
    /// <param name="constants">Machine constant times flux of each point, V s/rad; above 0, not falling.</param>
    /// <exception cref="ArgumentException">The points are no such curve.</exception>
    public Magnetisation(IReadOnlyList<double> amps, IReadOnlyList<double> constants)
    {
        _amps = [.. amps];
        _constants = [.. constants];
        if (_amps.Length < 2 || _amps.Length != _constants.Length || _amps[0] != 0 || !(_constants[0] > 0))
        {
            throw new ArgumentException("A magnetisation curve has two points or more, begins at 0 A and lies above 0.", nameof(amps));
        }

        for (int i = 1; i < _amps.Length; i++)
        {
            if (_amps[i] > _amps[i - 1] && _constants[i] >= _constants[i - 1]) continue;
            throw new ArgumentException("A magnetisation curve rises strictly in current and does not fall in flux.", nameof(amps));
        }
    }

    /// <summary>Field current of each point, A.</summary>
    public IReadOnlyList<double> Amps => _amps;

    /// <summary>Machine constant times flux of each point, V s/rad.</summary>
    public IReadOnlyList<double> Constants => _constants;

    /// <summary>The straight line from what remains without field current to the rated point; it stays there beyond.</summary>
    /// <param name="ratedAmps">Rated field current, A, above 0.</param>
    /// <param name="ratedConstant">Machine constant times flux at that current, V s/rad, above 0.</param>
    /// <param name="residualRatio">Part of the constant that remains without field current, above 0 to 1.</param>
    public static Magnetisation Proportional(double ratedAmps, double ratedConstant, double residualRatio = UsualResidualRatio) =>
        new([0, ratedAmps], [residualRatio * ratedConstant, ratedConstant]);

    /// <summary>Machine constant times flux at a field current, V s/rad.</summary>
    /// <param name="amps">Field current, A; below 0 counts as 0.</param>
    public double ConstantAt(double amps)
    {
        int last = _amps.Length - 1;
        if (amps >= _amps[last]) return _constants[last];
        if (amps <= 0) return _constants[0];
        int i = 1;
        while (amps > _amps[i]) i++;
        double part = (amps - _amps[i - 1]) / (_amps[i] - _amps[i - 1]);
        return _constants[i - 1] + part * (_constants[i] - _constants[i - 1]);
    }
}
