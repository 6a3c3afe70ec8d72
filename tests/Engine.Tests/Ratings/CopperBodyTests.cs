using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>A copper winding at a constant current. Sources: tests/published/SOURCES.md, CHK-24 (235) and CHK-37.</summary>
public sealed class CopperBodyTests
{
    // Without cooling du/dt = a (1 + u/255) from 20 degC: u = 255 (e^(a t/255) - 1). Derived here.
    [Fact]
    [Trait("Source", "CHK-24")]
    public void After_WithoutCooling_GrowsByTheAdiabaticClosedForm()
    {
        CopperBody body = new(new ThermalMass(2000, double.PositiveInfinity), 0.5, 20, 20);
        double perSecond = 40 * 40 * 0.5 / 2000;

        Assert.Equal(20 + 255 * (Math.Exp(perSecond * 100 / 255) - 1), body.After(20, 40, 100), 1e-9);
        Assert.Equal(100, body.SecondsTo(body.After(20, 40, 100), 20, 40), 1e-9);
        Assert.True(double.IsInfinity(body.Steady(40)));
    }

    // At rest from 120 degC to half the rise after tau ln 2, as CHK-16's cooling.
    [Fact]
    [Trait("Source", "CHK-37")]
    public void After_WithoutCurrent_CoolsExponentially() =>
        Assert.Equal(20 + 100 * 0.5, new CopperBody(new ThermalMass(2000, 600), 0.5, 20, 20).After(120, 0, 600 * Math.Log(2)), 1e-9);

    // The end is where Rth I^2 R(u) = u: u = Rth P / (1 - Rth P / 255), with P the loss at 20 degC.
    [Theory]
    [Trait("Source", "CHK-24")]
    [InlineData(30)]
    [InlineData(60)]
    public void Steady_WithCooling_IsWhereLossAndCoolingMeet(double amps)
    {
        CopperBody body = new(new ThermalMass(2000, 200), 0.5, 20, 20);
        double cold = 200 / 2000.0 * amps * amps * 0.5;

        Assert.Equal(20 + cold / (1 - cold / 255), body.Steady(amps), 1e-9);
        Assert.Equal(body.Steady(amps), body.After(20, amps, 1e5), 1e-6);
        Assert.True(double.IsInfinity(body.SecondsTo(body.Steady(amps) + 0.001, 20, amps)));
    }

    // Twice the current has four times the loss: past 255 K per cold watt there is no end.
    [Fact]
    public void Steady_LossOutrunsCooling_NeverEnds()
    {
        CopperBody body = new(new ThermalMass(2000, 200), 0.5, 20, 20);

        Assert.True(double.IsInfinity(body.Steady(80)));
        Assert.InRange(body.SecondsTo(500, 20, 80), 1, 1e6);
        Assert.Equal(0, body.SecondsTo(100, 120, 80));
    }
}
