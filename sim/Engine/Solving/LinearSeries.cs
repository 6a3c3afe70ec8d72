using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Series and doubling of x' = A x for x = (Ia, w, 1). Matrices are row-major, the last row (0, 0, 1) or 0 left out.</summary>
internal static class LinearSeries
{
    /// <summary>Highest power in a series.</summary>
    public const int Order = 9;

    // At this size of A h the first power left out is below the last bit.
    private const double SeriesSpan = 0.125;

    /// <summary>How often a span must be halved before the series serves it.</summary>
    public static int Doublings(ReadOnlySpan<double> a, double seconds)
    {
        double norm = Math.Max(Math.Abs(a[0]) + Math.Abs(a[1]), Math.Abs(a[3]) + Math.Abs(a[4]));
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

    /// <summary>The series itself: exp(A h).</summary>
    public static void Sum(ReadOnlySpan<double> a, double h, Span<double> next)
    {
        Span<double> terms = stackalloc double[3 * (Order + 1)];
        for (int row = 0; row < 2; row++)
        {
            Terms(a, h, row, terms);
            for (int c = 0; c < 3; c++)
            {
                double sum = 0;
                for (int k = Order; k >= 0; k--) sum += terms[3 * k + c];
                next[3 * row + c] = sum;
            }
        }
    }

    /// <summary>Squares: from a span to twice the span.</summary>
    public static void Double(Span<double> next)
    {
        double a = next[0], b = next[1], c = next[2], d = next[3], e = next[4], f = next[5];
        next[0] = a * a + b * d;
        next[1] = a * b + b * e;
        next[2] = a * c + b * f + c;
        next[3] = d * a + e * d;
        next[4] = d * b + e * e;
        next[5] = d * c + e * f + f;
    }
}
