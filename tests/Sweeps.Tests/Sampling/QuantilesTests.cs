using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Sampling;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sampling;

public sealed class QuantilesTests
{
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.25, 15)]
    [InlineData(1, 30)]
    public void ValueAt_Uniform_IsAStraightLine(double part, double value) =>
        Assert.Equal(value, Quantiles.ValueAt(Variable(ToleranceShape.Uniform, 20), part), 1e-12);

    // Of a normal distribution cut at three standard deviations, 0.9973 = 1 - 2 x 0.00135 is left; 0.8413 lies below one of them (standard tables).
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.5, 20)]
    [InlineData(1, 30)]
    [InlineData((0.8413447 - 0.0013499) / 0.9973002, 20 + 10.0 / 3)]
    public void ValueAt_Normal_HasItsLimitsAtThreeStandardDeviations(double part, double value) =>
        Assert.Equal(value, Quantiles.ValueAt(Variable(ToleranceShape.Normal, 20), part), 1e-5);

    // The density rises over 4 of 20 units: below the peak lies 4/20, and half of that below 4 x sqrt(1/2).
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.2, 14)]
    [InlineData(0.1, 10 + 4 * 0.70710678)]
    [InlineData(1, 30)]
    public void ValueAt_Triangular_PeaksAtTheNominalValue(double part, double value) =>
        Assert.Equal(value, Quantiles.ValueAt(Variable(ToleranceShape.Triangular, 14), part), 1e-6);

    [Fact]
    public void ValueAt_AnyPart_StaysBetweenTheLimits() =>
        Assert.All([ToleranceShape.Uniform, ToleranceShape.Normal, ToleranceShape.Triangular], shape =>
            Assert.All(Enumerable.Range(0, 1001), step => Assert.InRange(Quantiles.ValueAt(Variable(shape, 14), step / 1000.0), 10, 30)));

    private static PlantVariable Variable(ToleranceShape shape, double nominal) => new(CaseKeys.SupplyVoltage, -1, nominal, shape, 10, 30);
}
