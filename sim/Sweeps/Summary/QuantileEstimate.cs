using System;
using MathNet.Numerics.Distributions;

namespace StarterCtl.Sweeps.Summary;

/// <summary>A quantile of an outcome with bounds. Positive infinity: did not happen.</summary>
/// <param name="Part">Part of all starts that lie at or below it.</param>
/// <param name="Value">The outcome at that place of the sorted rows.</param>
/// <param name="Low">Lower bound; null: the rows are too few for one.</param>
/// <param name="High">Upper bound; null likewise.</param>
public sealed record QuantileEstimate(double Part, double Value, double? Low, double? High)
{
    /// <summary>Takes a quantile from sorted outcomes.</summary>
    /// <param name="sorted">Outcomes, rising.</param>
    /// <param name="part">Part of all, above 0 and below 1.</param>
    /// <param name="confidence">Probability with which the bounds enclose the true quantile of independent starts, at least.</param>
    /// <remarks>
    /// Bounds are order statistics by the binomial distribution of how many of n starts lie below the quantile: W. J. Conover, Practical
    /// Nonparametric Statistics, confidence interval for a quantile, from memory. They ask nothing of the distribution.
    /// </remarks>
    public static QuantileEstimate Of(ReadOnlySpan<double> sorted, double part, double confidence)
    {
        int count = sorted.Length;
        (int? low, int? high) = Places(count, part, confidence);
        int place = Math.Clamp((int)Math.Ceiling(part * count), 1, count);
        return new QuantileEstimate(part, sorted[place - 1], low is int l ? sorted[l - 1] : null, high is int h ? sorted[h - 1] : null);
    }

    /// <summary>Places of the bounds among sorted outcomes, from 1; null where there is none.</summary>
    /// <param name="count">Number of outcomes.</param>
    /// <param name="part">Part of all.</param>
    /// <param name="confidence">Probability wanted; half of the rest is left on either side.</param>
    public static (int? Low, int? High) Places(int count, double part, double confidence)
    {
        double tail = (1 - confidence) / 2;
        // The lower place is the last r with P(B <= r - 1) up to the tail, the upper the first s with P(B <= s - 1) from 1 less the tail.
        int low = First(count, r => Binomial.CDF(part, count, r) > tail), high = First(count, s => Binomial.CDF(part, count, s) >= 1 - tail) + 1;
        return (low >= 1 ? low : null, high <= count ? high : null);
    }

    // The first number from 0 on for which a condition holds that holds from there on; count where it holds for none below.
    private static int First(int count, Predicate<int> holds)
    {
        int low = 0, high = count;
        while (low < high)
        {
            int middle = low + (high - low) / 2;
            if (holds(middle)) high = middle;
            else low = middle + 1;
        }

        return low;
    }
}
