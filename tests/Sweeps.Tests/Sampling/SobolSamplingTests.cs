using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Sweeps.Sampling;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sampling;

public sealed class SobolSamplingTests
{
    // The first ten points in three dimensions as Joe and Kuo print them beside their numbers; from memory.
    private static readonly double[][] First =
    [
        [0, 0, 0], [0.5, 0.5, 0.5], [0.75, 0.25, 0.25], [0.25, 0.75, 0.75], [0.375, 0.375, 0.625], [0.875, 0.875, 0.125],
        [0.625, 0.125, 0.875], [0.125, 0.625, 0.375], [0.1875, 0.3125, 0.9375], [0.6875, 0.8125, 0.4375],
    ];

    [Fact]
    public void BitsAt_FirstTenPoints_AreThePublishedOnes()
    {
        SobolSampling sobol = new(3, 1);

        for (int point = 0; point < First.Length; point++)
        {
            Assert.Equal(First[point], Enumerable.Range(0, 3).Select(dimension => sobol.BitsAt(point, dimension) / 4294967296.0));
        }
    }

    [Fact]
    public void DirectionNumbers_Table_IsEveryPrimitivePolynomialInOrderWithOddNumbersOfEachSize()
    {
        int[][] rows = DirectionNumbers.Rows;
        IEnumerable<(int Degree, int Inner)> primitive = Enumerable.Range(1, 10).SelectMany(degree => Enumerable.Range(0, 1 << (degree - 1)).Select(inner => (degree, inner))).Where(pair => IsPrimitive(pair.degree, pair.inner));

        Assert.Equal(127, rows.Length);
        Assert.Equal(primitive.Take(127), rows.Select(row => (row[0], row[1])));
        Assert.All(rows, row =>
        {
            Assert.Equal(2 + row[0], row.Length);
            for (int k = 1; k <= row[0]; k++) Assert.True(row[1 + k] % 2 == 1 && row[1 + k] < 1 << k);
        });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4711)]
    public void At_TwoToTheTenPoints_HaveOneInEachOfAsManySlicesOfEveryDimension(int seed)
    {
        SobolSampling sobol = new(SobolSampling.MostDimensions, seed);

        for (int dimension = 0; dimension < SobolSampling.MostDimensions; dimension++)
        {
            Assert.Equal(Enumerable.Range(0, 1024), Enumerable.Range(0, 1024).Select(point => (int)(1024 * sobol.At(point, dimension))).Order());
        }
    }

    [Fact]
    public void At_FirstTwoDimensions_AreANetInBaseTwo()
    {
        SobolSampling sobol = new(2, 99);

        // Every way to cut the square into 256 equal boxes: each holds one of 256 points.
        for (int bits = 0; bits <= 8; bits++)
        {
            int across = 1 << bits, up = 256 / across;
            Assert.Equal(256, Enumerable.Range(0, 256).Select(point => ((int)(across * sobol.At(point, 0)), (int)(up * sobol.At(point, 1)))).Distinct().Count());
        }
    }

    [Fact]
    public void At_ProductOverTenDimensions_IsIntegratedFarBetterThanByChance()
    {
        SobolSampling sobol = new(10, 5);
        const int points = 4096;

        double mean = Enumerable.Range(0, points).Average(point => Enumerable.Range(0, 10).Aggregate(1.0, (product, dimension) => product * (1 + 0.5 * (sobol.At(point, dimension) - 0.5))));

        // The integral is 1; independent points have a standard error of sqrt((1 + 1/48)^10 - 1) / sqrt(4096) = 0.0075.
        Assert.Equal(1, mean, 0.0005);
    }

    [Fact]
    public void At_AnyPoint_LiesInsideAndDependsOnTheSeed()
    {
        SobolSampling one = new(3, 1), two = new(3, 2);

        Assert.InRange(one.At(SobolSampling.MostPoints - 1, 2), 1e-10, 1 - 1e-10);
        Assert.NotEqual(one.At(0, 0), two.At(0, 0));
        Assert.NotEqual(one.At(0, 0), one.At(0, 1));
    }

    // x has the order 2^degree - 1 modulo the polynomial: the definition, tried out.
    private static bool IsPrimitive(int degree, int inner)
    {
        int polynomial = (1 << degree) | (inner << 1) | 1, power = 1, order = 0;
        do
        {
            power <<= 1;
            if ((power & (1 << degree)) != 0) power ^= polynomial;
            order++;
        }
        while (power > 1);
        return power == 1 && order == (1 << degree) - 1;
    }
}
