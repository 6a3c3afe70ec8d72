using System;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Machines;

public sealed class MagnetisationTests
{
    [Theory]
    [InlineData(-1, 0.1)]
    [InlineData(0, 0.1)]
    [InlineData(0.5, 0.6)]
    [InlineData(1, 1.1)]
    [InlineData(2, 1.35)]
    [InlineData(3, 1.6)]
    [InlineData(4, 1.6)]
    public void ConstantAt_Curve_IsStraightBetweenItsPointsAndStaysBehindThem(double amps, double constant) =>
        Assert.Equal(constant, new Magnetisation([0, 1, 3], [0.1, 1.1, 1.6]).ConstantAt(amps), 1e-15);

    [Fact]
    public void Proportional_RatedPoint_IsTheLineFromTheResidualToIt()
    {
        Magnetisation line = Magnetisation.Proportional(2, 1.6, 0.05);

        Assert.Equal(0.08, line.ConstantAt(0), 1e-15);
        Assert.Equal(0.84, line.ConstantAt(1), 1e-15);
        Assert.Equal(1.6, line.ConstantAt(2));
        Assert.Equal(1.6, line.ConstantAt(2.5));
    }

    [Theory]
    [InlineData(new double[] { 0 }, new double[] { 1 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 1 })]
    [InlineData(new double[] { 0.1, 1 }, new double[] { 1, 2 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 0, 2 })]
    [InlineData(new double[] { 0, 1, 1 }, new double[] { 1, 2, 3 })]
    [InlineData(new double[] { 0, 1, 2 }, new double[] { 1, 2, 1.9 })]
    [InlineData(new double[] { 0, double.NaN }, new double[] { 1, 2 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 1, double.NaN })]
    public void Points_NoCurve_AreRefused(double[] amps, double[] constants) =>
        Assert.Throws<ArgumentException>(() => new Magnetisation(amps, constants));
}
