using System.Linq;
using StarterCtl.Sweeps.Sampling;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sampling;

public sealed class OtherSamplingTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(1000)]
    public void Latin_EachVariable_HasOnePointInEverySlice(int count)
    {
        LatinSampling latin = new(5, count, 3);

        for (int dimension = 0; dimension < 5; dimension++)
        {
            Assert.Equal(Enumerable.Range(0, count), Enumerable.Range(0, count).Select(point => (int)(count * latin.At(point, dimension))).Order());
        }
    }

    [Fact]
    public void Latin_Variables_AreNotCorrelated()
    {
        LatinSampling latin = new(2, 2000, 3);

        double product = Enumerable.Range(0, 2000).Average(point => (latin.At(point, 0) - 0.5) * (latin.At(point, 1) - 0.5));

        // Standard error of the mean product of independent ranks: (1/12) / sqrt(2000) = 0.0019.
        Assert.Equal(0, product, 4 * 0.0019);
    }

    [Fact]
    public void Corners_OfThreeVariables_AreAllEightOnce()
    {
        FactorialSampling corners = new(3, 2, 5);

        Assert.Equal(8, corners.Count);
        Assert.Equal(8, Enumerable.Range(0, 8).Select(point => (corners.At(point, 0), corners.At(point, 1), corners.At(point, 2))).Distinct().Count());
        Assert.All(Enumerable.Range(0, 8), point => Assert.True(corners.At(point, 1) is 0 or 1));
    }

    [Fact]
    public void Factorial_OfThreeLevels_HasTheMiddleToo()
    {
        FactorialSampling factorial = new(2, 3, 5);

        Assert.Equal(
            [(0, 0), (0, 0.5), (0, 1), (0.5, 0), (0.5, 0.5), (0.5, 1), (1, 0), (1, 0.5), (1, 1)],
            Enumerable.Range(0, 9).Select(point => (factorial.At(point, 0), factorial.At(point, 1))).Order());
    }

    [Theory]
    [InlineData(20, 2, 1L << 20)]
    [InlineData(62, 2, 1L << 62)]
    [InlineData(63, 2, null)]
    [InlineData(4, 3, 81L)]
    public void Factorial_Count_IsThatOfAllCombinations(int dimensions, int levels, long? count) => Assert.Equal(count, FactorialSampling.CountOf(dimensions, levels));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(1000)]
    [InlineData(1025)]
    public void IndexPermutation_AnyCount_TakesEveryPlaceOnce(int count)
    {
        IndexPermutation order = new(count, 7, 0);

        Assert.Equal(Enumerable.Range(0, count).Select(place => (long)place), Enumerable.Range(0, count).Select(place => order.At(place)).Order());
    }
}
