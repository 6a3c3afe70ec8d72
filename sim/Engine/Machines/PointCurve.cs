using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// A smooth curve through points that rises and falls only where they do, so that none of its values lies outside those of
/// the two points around it. Level before the first point and behind the last.
/// </summary>
/// <remarks>
/// Cubic pieces whose slopes are weighted harmonic means of the neighbouring chords, 0 where these differ in sign: monotone by
/// construction. Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984), 300-304, with three-point end slopes; from memory.
/// </remarks>
public sealed class PointCurve
{
    private readonly double[] _xs;
    private readonly double[] _ys;
    private readonly Piece[] _pieces;

    /// <summary>Takes the points.</summary>
    /// <param name="xs">Where they are; two or more, finite, rising strictly.</param>
    /// <param name="ys">Their values, as many, finite.</param>
    /// <exception cref="ArgumentException">The points are no such curve.</exception>
    public PointCurve(IReadOnlyList<double> xs, IReadOnlyList<double> ys)
    {
        _xs = [.. xs];
        _ys = [.. ys];
        if (_xs.Length < 2 || _xs.Length != _ys.Length) throw new ArgumentException("A curve has two points or more, each with its value.", nameof(xs));
        for (int i = 0; i < _xs.Length; i++)
        {
            if (double.IsFinite(_xs[i]) && double.IsFinite(_ys[i]) && (i == 0 || _xs[i] > _xs[i - 1])) continue;
            throw new ArgumentException("The points of a curve are finite and rise strictly.", nameof(xs));
        }

        _pieces = Pieces(Slopes());
    }

    /// <summary>Where the points are.</summary>
    public IReadOnlyList<double> Xs => _xs;

    /// <summary>Their values.</summary>
    public IReadOnlyList<double> Ys => _ys;

    /// <summary>Value of the curve, and how it changes.</summary>
    /// <param name="x">Where.</param>
    /// <param name="slope">Change of the value per change of <paramref name="x"/>.</param>
    public double At(double x, out double slope)
    {
        int last = _xs.Length - 1;
        if (x >= _xs[last] || x < _xs[0])
        {
            slope = 0;
            return x < _xs[0] ? _ys[0] : _ys[last];
        }

        int i = 0;
        while (x > _xs[i + 1]) i++;
        ref readonly Piece piece = ref _pieces[i];
        double t = x - _xs[i];
        slope = piece.C1 + t * (2 * piece.C2 + t * 3 * piece.C3);
        return _ys[i] + t * (piece.C1 + t * (piece.C2 + t * piece.C3));
    }

    /// <summary>The cubic piece behind a point: c0 + c1 t + c2 t^2 + c3 t^3 of the way t behind it, c0 the point's value.</summary>
    private readonly record struct Piece(double C1, double C2, double C3);

    // From the slopes at both ends of a piece.
    private Piece[] Pieces(double[] slopes)
    {
        Piece[] pieces = new Piece[_xs.Length - 1];
        for (int i = 0; i < pieces.Length; i++)
        {
            double span = _xs[i + 1] - _xs[i], chord = Chord(i + 1);
            double c3 = (slopes[i] + slopes[i + 1] - 2 * chord) / (span * span);
            pieces[i] = new Piece(slopes[i], (chord - slopes[i]) / span - c3 * span, c3);
        }

        return pieces;
    }

    private double[] Slopes()
    {
        int last = _xs.Length - 1;
        double[] slopes = new double[last + 1];
        if (last == 1)
        {
            slopes[0] = slopes[1] = Chord(1);
            return slopes;
        }

        for (int i = 1; i < last; i++)
        {
            double before = Chord(i), after = Chord(i + 1);
            if (Math.Sign(before) * Math.Sign(after) <= 0) continue;
            double spanBefore = _xs[i] - _xs[i - 1], spanAfter = _xs[i + 1] - _xs[i];
            double weightBefore = spanBefore + 2 * spanAfter, weightAfter = 2 * spanBefore + spanAfter;
            slopes[i] = (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
        }

        slopes[0] = EndSlope(_xs[1] - _xs[0], _xs[2] - _xs[1], Chord(1), Chord(2));
        slopes[last] = EndSlope(_xs[last] - _xs[last - 1], _xs[last - 1] - _xs[last - 2], Chord(last), Chord(last - 1));
        return slopes;
    }

    private double Chord(int i) => (_ys[i] - _ys[i - 1]) / (_xs[i] - _xs[i - 1]);

    // Three points decide, as far as the curve stays monotone: between 0 and three times the chord at the end.
    private static double EndSlope(double span, double nextSpan, double chord, double nextChord)
    {
        double slope = ((2 * span + nextSpan) * chord - span * nextChord) / (span + nextSpan);
        return Math.Clamp(slope, Math.Min(0, 3 * chord), Math.Max(0, 3 * chord));
    }
}
