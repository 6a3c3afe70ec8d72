using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// Machine constant times flux over an exciting current: a smooth curve through points that rises wherever they do. Behind the
/// last point it stays where it is; below 0 it is the same curve turned about its point at 0, so that the flux reverses.
/// </summary>
/// <remarks>
/// Cubic pieces whose slopes are weighted harmonic means of the neighbouring chords: monotone by construction. Fritsch and
/// Butland, SIAM J. Sci. Stat. Comput. 5 (1984), 300-304, with three-point end slopes; from memory.
/// </remarks>
public sealed class Magnetisation
{
    /// <summary>Part of the rated constant that stays without field current. Common practice, no source.</summary>
    public const double UsualResidualRatio = 0.03;

    private readonly double[] _amps;
    private readonly double[] _constants;
    private readonly Piece[] _pieces;

    /// <summary>Takes the points of a curve.</summary>
    /// <param name="amps">Exciting current of each point, A; two or more, the first 0, rising strictly.</param>
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
            if (_amps[i] > _amps[i - 1] && _constants[i] >= _constants[i - 1] && double.IsFinite(_amps[i]) && double.IsFinite(_constants[i])) continue;
            throw new ArgumentException("A magnetisation curve rises strictly in current and does not fall in flux.", nameof(amps));
        }

        _pieces = Pieces(Slopes());
    }

    /// <summary>Exciting current of each point, A.</summary>
    public IReadOnlyList<double> Amps => _amps;

    /// <summary>Machine constant times flux of each point, V s/rad.</summary>
    public IReadOnlyList<double> Constants => _constants;

    /// <summary>Largest exciting current that the curve knows, A.</summary>
    public double LastAmps => _amps[^1];

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
    public double At(double amps, out double slope)
    {
        if (amps < 0) return 2 * _constants[0] - At(-amps, out slope);
        int last = _amps.Length - 1;
        if (amps >= _amps[last])
        {
            slope = 0;
            return _constants[last];
        }

        int i = 0;
        while (amps > _amps[i + 1]) i++;
        ref readonly Piece piece = ref _pieces[i];
        double t = amps - _amps[i];
        slope = piece.C1 + t * (2 * piece.C2 + t * 3 * piece.C3);
        return _constants[i] + t * (piece.C1 + t * (piece.C2 + t * piece.C3));
    }

    /// <summary>The cubic piece behind a point: c0 + c1 t + c2 t^2 + c3 t^3 of the current t behind it, c0 the point's constant.</summary>
    private readonly record struct Piece(double C1, double C2, double C3);

    // From the slopes at both ends of a piece.
    private Piece[] Pieces(double[] slopes)
    {
        Piece[] pieces = new Piece[_amps.Length - 1];
        for (int i = 0; i < pieces.Length; i++)
        {
            double span = _amps[i + 1] - _amps[i], chord = Chord(i + 1);
            double c3 = (slopes[i] + slopes[i + 1] - 2 * chord) / (span * span);
            pieces[i] = new Piece(slopes[i], (chord - slopes[i]) / span - c3 * span, c3);
        }

        return pieces;
    }

    private double[] Slopes()
    {
        int last = _amps.Length - 1;
        double[] slopes = new double[last + 1];
        if (last == 1)
        {
            slopes[0] = slopes[1] = Chord(1);
            return slopes;
        }

        for (int i = 1; i < last; i++)
        {
            double before = Chord(i), after = Chord(i + 1);
            if (before <= 0 || after <= 0) continue;
            double spanBefore = _amps[i] - _amps[i - 1], spanAfter = _amps[i + 1] - _amps[i];
            double weightBefore = spanBefore + 2 * spanAfter, weightAfter = 2 * spanBefore + spanAfter;
            slopes[i] = (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
        }

        slopes[0] = EndSlope(_amps[1] - _amps[0], _amps[2] - _amps[1], Chord(1), Chord(2));
        slopes[last] = EndSlope(_amps[last] - _amps[last - 1], _amps[last - 1] - _amps[last - 2], Chord(last), Chord(last - 1));
        return slopes;
    }

    private double Chord(int i) => (_constants[i] - _constants[i - 1]) / (_amps[i] - _amps[i - 1]);

    // Three points decide, as far as the curve stays monotone: between 0 and three times the chord at the end.
    private static double EndSlope(double span, double nextSpan, double chord, double nextChord)
    {
        double slope = ((2 * span + nextSpan) * chord - span * nextChord) / (span + nextSpan);
        return Math.Clamp(slope, 0, 3 * chord);
    }
}
