using System;

namespace StarterCtl.Engine.Solving;

/// <summary>A cubic c0 + c1 s + c2 s^2 + c3 s^3.</summary>
public readonly record struct Cubic(double C0, double C1, double C2, double C3)
{
    private const int MostHalvings = 60;

    /// <summary>Its value.</summary>
    public double At(double s) => C0 + s * (C1 + s * (C2 + s * C3));

    /// <summary>Where it turns, in rising order; NaN where it does not.</summary>
    public (double First, double Second) Turns()
    {
        // 3 c3 s^2 + 2 c2 s + c1 = 0, by the form that loses no digits.
        double a = 3 * C3, b = C2, discriminant = b * b - a * C1;
        if (!(discriminant >= 0)) return (double.NaN, double.NaN);
        double sum = -(b + (b >= 0 ? 1 : -1) * Math.Sqrt(discriminant));
        double one = a != 0 ? sum / a : double.NaN, other = sum != 0 ? C1 / sum : double.NaN;
        return one <= other || double.IsNaN(other) ? (one, other) : (other, one);
    }

    /// <summary>The first place of (0, 1] from which on it is below zero; above 1 where there is none.</summary>
    /// <param name="sign">1 or -1: the cubic is looked at multiplied by it.</param>
    /// <param name="allowance">How far below zero still counts as zero, 0 or more.</param>
    public double FirstBelowZero(int sign, double allowance)
    {
        (double first, double second) = Turns();
        double at = 0;
        foreach (double next in (ReadOnlySpan<double>)[first, second, 1])
        {
            if (!(next > at && next <= 1)) continue;
            if (sign * At(next) < -allowance) return Crossing(sign, at, next);
            at = next;
        }

        return double.PositiveInfinity;
    }

    // From not below zero, or hardly, to below it, with no turn between.
    private double Crossing(int sign, double above, double below)
    {
        for (int i = 0; i < MostHalvings; i++)
        {
            double middle = above + (below - above) / 2;
            if (middle <= above || middle >= below) break;
            if (sign * At(middle) < 0) below = middle;
            else above = middle;
        }

        return below;
    }
}
