using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

// Source: CHK-37 of tests/published/SOURCES.md, the first-order rise of one body.
[Trait("Source", "CHK-37")]
public sealed class ThermalBodyTests
{
    // 500 W through 0.2 K/W end 100 K above the surroundings, with a time constant of 1000 J/K times 0.2 K/W.
    private static readonly ThermalMass Mass = new(1000, 200);

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(10_000)]
    public void Advance_ConstantPower_RisesAndCoolsByItsTimeConstantInAnySpans(int spans)
    {
        ThermalBody body = new(Mass, 30);

        for (int i = 0; i < spans; i++) body.Advance(200.0 / spans, 500 * 200.0 / spans, 30);
        Assert.Equal(30 + 100 * (1 - Math.Exp(-1)), body.Celsius, 1e-9);
        for (int i = 0; i < spans; i++) body.Advance(200.0 / spans, 0, 30);

        Assert.Equal(30 + 100 * (1 - Math.Exp(-1)) * Math.Exp(-1), body.Celsius, 1e-9);
        Assert.Equal(30 + 100 * (1 - Math.Exp(-1)), body.HighestCelsius, 1e-9);
        Assert.Equal(30, body.StartCelsius);
    }

    [Theory]
    [InlineData(double.PositiveInfinity, true)]
    [InlineData(200, false)]
    public void Advance_WithoutCooling_RisesByHeatOverCapacity(double coolingSeconds, bool isCooled)
    {
        ThermalBody body = new(new ThermalMass(1000, coolingSeconds), 80) { IsCooled = isCooled };

        body.Advance(50, 12_345, 20);
        body.Advance(500, 0, 20);

        Assert.Equal(92.345, body.Celsius, 1e-12);
    }

    // (1 - e^(-x)) / x = 1 - x/2 + x^2/6 - ..., on both sides of where the body changes from one form to the other.
    [Theory]
    [InlineData(1e-9)]
    [InlineData(0.9e-5)]
    [InlineData(1.1e-5)]
    [InlineData(1e-3)]
    public void CelsiusAfter_ShortSpan_LosesHalfOfItsPart(double part)
    {
        double rise = new ThermalBody(Mass, 0).CelsiusAfter(part * 200, 500 / part, 0);

        Assert.Equal(1 - part / 2 + part * part / 6 - part * part * part / 24, rise / 100, 1e-10);
    }

    [Fact]
    public void KelvinPerSecond_IsTheSlopeOfTheCourse()
    {
        ThermalBody body = new(Mass, 70);

        Assert.Equal((body.CelsiusAfter(1e-4, 500, 20) - 70) / 1e-4, body.KelvinPerSecond(500, 20), 1e-6);
        body.IsCooled = false;
        Assert.Equal(0.5, body.KelvinPerSecond(500, 20), 1e-12);
    }
}
