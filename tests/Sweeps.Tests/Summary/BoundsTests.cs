using System.Linq;
using StarterCtl.Sweeps.Summary;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Summary;

public sealed class BoundsTests
{
    [Theory]
    // None of n: the upper bound is 1 - (alpha / 2)^(1/n); derived.
    [InlineData(0, 10, 0, 0.30850)]
    [InlineData(0, 100000, 0, 0.0000368881)]
    // As tables of exact binomial limits have them; from memory.
    [InlineData(1, 10, 0.0025, 0.4450)]
    [InlineData(2, 10, 0.0252, 0.5561)]
    [InlineData(3, 10, 0.0667, 0.6525)]
    [InlineData(5, 10, 0.1871, 0.8129)]
    [InlineData(1, 20, 0.0013, 0.2487)]
    [InlineData(5, 20, 0.0866, 0.4910)]
    [InlineData(10, 20, 0.2720, 0.7280)]
    [InlineData(5, 100, 0.0164, 0.1128)]
    [InlineData(10, 100, 0.0490, 0.1762)]
    [InlineData(50, 100, 0.3983, 0.6017)]
    [InlineData(10, 10, 0.69150, 1)]
    public void Bounded_ShareOfStarts_HasTheExactLimits(long count, long of, double low, double high)
    {
        ShareEstimate share = ShareEstimate.Bounded(count, of, 0.95);

        Assert.Equal(low, share.Low, 0.00005);
        Assert.Equal(high, share.High, 0.00005);
        Assert.Equal((double)count / of, share.Share);
    }

    [Theory]
    // Of the median, as tables of the sign test have them for 95 %: n = 10 gives 2 and 9, n = 20 gives 6 and 15, n = 5 none; derived from the binomial sums below.
    [InlineData(10, 0.5, 2, 9)]
    [InlineData(20, 0.5, 6, 15)]
    [InlineData(5, 0.5, null, null)]
    // 0.95^n has to fall to 0.025 before the largest of n bounds the 95 % point: 72 starts.
    [InlineData(71, 0.95, 63, null)]
    [InlineData(72, 0.95, 64, 72)]
    public void Places_OfAQuantile_AreThoseOfTheBinomialDistribution(int count, double part, int? low, int? high)
    {
        Assert.Equal((low, high), QuantileEstimate.Places(count, part, 0.95));
        if (low is int l) Assert.True(Below(count, part, l - 1) <= 0.025 && Below(count, part, l) > 0.025);
        if (high is int h) Assert.True(Below(count, part, h - 1) >= 0.975 && Below(count, part, h - 2) < 0.975);
    }

    [Fact]
    public void Of_SortedOutcomes_TakesValuesThatAreThere()
    {
        double[] sorted = [.. Enumerable.Range(1, 1000).Select(number => (double)number)];

        QuantileEstimate median = QuantileEstimate.Of(sorted, 0.5, 0.95);

        Assert.Equal((500, 469, 532), (median.Value, median.Low, median.High));
    }

    // P(B <= most) of n starts, each below the quantile with probability part, added up term by term.
    private static double Below(int count, double part, int most)
    {
        double term = System.Math.Pow(1 - part, count), sum = most < 0 ? 0 : term;
        for (int i = 1; i <= most; i++)
        {
            term *= (count - i + 1.0) / i * part / (1 - part);
            sum += term;
        }

        return sum;
    }
}
