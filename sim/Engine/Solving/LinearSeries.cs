using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Series and doubling of x' = A x for x = (Ia, w, 1). Matrices are row-major, the last row (0, 0, 1) or 0 left out.</summary>
internal static class LinearSeries
{
    /// <summary>Highest power in a series.</summary>
    public const int Order = 9;

    // 1 / (k + 1)! for the powers of the series but the last.
    private static readonly double[] OneOverFactorial =
        [1, 1.0 / 2, 1.0 / 6, 1.0 / 24, 1.0 / 120, 1.0 / 720, 1.0 / 5040, 1.0 / 40320, 1.0 / 362880];

    // At this size of A h the first power left out is below the last bit.
    private const double SeriesSpan = 0.125;

    /// <summary>How often a span must be halved before the series serves it.</summary>
    public static int Doublings(ReadOnlySpan<double> a, double seconds)
    {
        double norm = Math.Max(Math.Abs(a[0]) + Math.Abs(a[1]), Math.Abs(a[3]) + Math.Abs(a[4]));
        if (!double.IsFinite(norm * seconds)) throw new ArgumentOutOfRangeException(nameof(seconds), "The machine's time constants are out of any sensible range.");
        int doublings = 0;
        for (double span = norm * seconds; span > SeriesSpan; span /= 2) doublings++;
        return doublings;
    }

    /// <summary>The terms of one state's row: term k is the row of (A h)^k / k!.</summary>
    /// <param name="a">A.</param>
    /// <param name="h">Span, s.</param>
    /// <param name="row">0 for the current, 1 for the speed.</param>
    /// <param name="terms">Receives three numbers for each power.</param>
    public static void Terms(ReadOnlySpan<double> a, double h, int row, Span<double> terms)
    {
        terms.Clear();
        terms[row] = 1;
        for (int k = 1; k <= Order; k++)
        {
            double i = terms[3 * k - 3], w = terms[3 * k - 2];
            for (int c = 0; c < 3; c++) terms[3 * k + c] = (i * a[c] + w * a[3 + c]) * h / k;
        }
    }

    /// <summary>The change over a span, exp(A h) - 1 = f(B h) A h with f(X) = 1 + X/2! + X^2/3! + ..., B the upper left of A.</summary>
    public static void Change(ReadOnlySpan<double> a, double h, Span<double> change)
    {
        double x00 = a[0] * h, x01 = a[1] * h, x10 = a[3] * h, x11 = a[4] * h;
        double f00 = OneOverFactorial[^1], f01 = 0, f10 = 0, f11 = f00;
        for (int k = OneOverFactorial.Length - 2; k >= 0; k--)
        {
            double g00 = x00 * f00 + x01 * f10, g01 = x00 * f01 + x01 * f11;
            double g10 = x10 * f00 + x11 * f10, g11 = x10 * f01 + x11 * f11;
            f00 = g00 + OneOverFactorial[k];
            f01 = g01;
            f10 = g10;
            f11 = g11 + OneOverFactorial[k];
        }

        for (int c = 0; c < 3; c++)
        {
            double amps = a[c] * h, speed = a[3 + c] * h;
            change[c] = f00 * amps + f01 * speed;
            change[3 + c] = f10 * amps + f11 * speed;
        }
    }

    /// <summary>From the change over a span to that over twice the span: D(2h) = 2 D(h) + D(h)^2.</summary>
    /// <remarks>Squaring exp(A h) itself would double the rounding of a slow change with every doubling.</remarks>
    public static void Double(Span<double> change)
    {
        double a = change[0], b = change[1], c = change[2], d = change[3], e = change[4], f = change[5];
        change[0] = 2 * a + (a * a + b * d);
        change[1] = 2 * b + (a * b + b * e);
        change[2] = 2 * c + (a * c + b * f);
        change[3] = 2 * d + (d * a + e * d);
        change[4] = 2 * e + (d * b + e * e);
        change[5] = 2 * f + (d * c + e * f);
    }
}
