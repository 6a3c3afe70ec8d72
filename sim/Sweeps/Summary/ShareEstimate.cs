using MathNet.Numerics.Distributions;

namespace StarterCtl.Sweeps.Summary;

/// <summary>A share of starts with its exact bounds.</summary>
/// <param name="Count">Starts of which it is true.</param>
/// <param name="Of">All starts.</param>
/// <param name="Low">Lower bound of the true share.</param>
/// <param name="High">Upper bound.</param>
public sealed record ShareEstimate(long Count, long Of, double Low, double High)
{
    /// <summary>The share itself.</summary>
    public double Share => (double)Count / Of;

    /// <summary>Bounds by C. J. Clopper and E. S. Pearson, Biometrika 26 (1934), 404-413, in terms of the beta distribution; from memory.</summary>
    /// <param name="count">Starts of which it is true.</param>
    /// <param name="of">All starts, 1 or more.</param>
    /// <param name="confidence">Probability with which the bounds enclose the true share, at least.</param>
    public static ShareEstimate Bounded(long count, long of, double confidence)
    {
        double tail = (1 - confidence) / 2;
        double low = count == 0 ? 0 : Beta.InvCDF(count, of - count + 1, tail);
        double high = count == of ? 1 : Beta.InvCDF(count + 1, of - count, 1 - tail);
        return new ShareEstimate(count, of, low, high);
    }
}
