using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Export;

/// <summary>Curves as nested conditions, <c>cond ? a : b</c>, that a behavioural source evaluates.</summary>
public static class SpiceCurve
{
    /// <summary>
    /// A smooth curve from its first point on: its own cubic pieces, coefficients at full precision, so that nothing is lost but
    /// rounding.
    /// </summary>
    /// <param name="curve">The curve.</param>
    /// <param name="x">Expression of the argument, not below the first point.</param>
    public static string Cubics(PointCurve curve, string x)
    {
        List<string> pieces = [];
        for (int i = 1; i < curve.Xs.Count; i++)
        {
            (double first, double second, double third) = Coefficients(curve, i);
            string behind = $"({x}-{SpiceText.Number(curve.Xs[i - 1])})";
            pieces.Add($"{x} < {SpiceText.Number(curve.Xs[i])} ? {SpiceText.Number(curve.Ys[i - 1])} + {behind}*({SpiceText.Number(first)} + {behind}*({SpiceText.Number(second)} + {behind}*({SpiceText.Number(third)})))");
        }

        return Nested(pieces, SpiceText.Number(curve.Ys[^1]));
    }

    /// <summary>Straight lines between points, level before the first and behind the last.</summary>
    /// <param name="xs">Where the points are, rising.</param>
    /// <param name="ys">Their values.</param>
    /// <param name="x">Expression of the argument.</param>
    public static string Lines(IReadOnlyList<double> xs, IReadOnlyList<double> ys, string x)
    {
        List<string> pieces = [$"{x} < {SpiceText.Number(xs[0])} ? {SpiceText.Number(ys[0])}"];
        for (int i = 1; i < xs.Count; i++)
        {
            double slope = (ys[i] - ys[i - 1]) / (xs[i] - xs[i - 1]);
            pieces.Add($"{x} < {SpiceText.Number(xs[i])} ? {SpiceText.Number(ys[i - 1])} + ({x}-{SpiceText.Number(xs[i - 1])})*({SpiceText.Number(slope)})");
        }

        return Nested(pieces, SpiceText.Number(ys[^1]));
    }

    /// <summary>
    /// Coefficients of the piece that ends at a point, in rising powers of the way behind the piece's beginning. The piece
    /// is a cubic with known ends; its slopes at the beginning and in the middle give the rest.
    /// </summary>
    /// <param name="curve">The curve.</param>
    /// <param name="i">Index of the point, 1 or more.</param>
    public static (double First, double Second, double Third) Coefficients(PointCurve curve, int i)
    {
        double span = curve.Xs[i] - curve.Xs[i - 1], chord = (curve.Ys[i] - curve.Ys[i - 1]) / span;
        curve.At(curve.Xs[i - 1], out double atBegin);
        curve.At(curve.Xs[i - 1] + 0.5 * span, out double inMiddle);
        double before = atBegin - chord, after = 4 * (chord - inMiddle) - before;
        return (atBegin, (-2 * before - after) / span, (before + after) / (span * span));
    }

    private static string Nested(List<string> pieces, string last) =>
        string.Join("", pieces.ConvertAll(piece => $"({piece} : ")) + last + new string(')', pieces.Count);
}
