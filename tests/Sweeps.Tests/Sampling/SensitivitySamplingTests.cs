using System.Linq;
using StarterCtl.Sweeps.Sampling;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sampling;

public sealed class SensitivitySamplingTests
{
    [Fact]
    public void At_RowsOfAGroup_DifferFromTheFirstInOneQuantityOrInTheNoise()
    {
        SensitivitySampling sampling = new(3, 600, 7);
        SobolSampling sobol = new(6, 7);

        for (int group = 0; group < 100; group++)
        {
            double[][] rows = [.. Enumerable.Range(0, 6).Select(place => Enumerable.Range(0, 3).Select(i => sampling.At(6 * group + place, i)).ToArray())];
            double[] a = [.. Enumerable.Range(0, 3).Select(i => sobol.At(group, i))], b = [.. Enumerable.Range(0, 3).Select(i => sobol.At(group, 3 + i))];

            Assert.Equal([a, b, [b[0], a[1], a[2]], [a[0], b[1], a[2]], [a[0], a[1], b[2]], a], rows);
            Assert.Equal([2 * group, 2 * group + 1, 2 * group, 2 * group, 2 * group, 2 * group + 1], Enumerable.Range(0, 6).Select(place => (int)sampling.NoiseOf(6 * group + place)));
        }
    }

    [Theory]
    [InlineData(600, 600)]
    [InlineData(605, 600)]
    [InlineData(null, 1024 * 6)]
    public void Count_OfRows_IsWholeGroups(int? count, int taken) => Assert.Equal(taken, new SensitivitySampling(3, count, 7).Count);
}
