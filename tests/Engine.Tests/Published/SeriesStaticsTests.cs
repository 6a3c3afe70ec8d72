using System;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Published;

/// <summary>The statics that series starters are designed on. Sources: tests/published/SOURCES.md, by the number in each trait.</summary>
public sealed class SeriesStaticsTests
{
    /// <summary>Supply, ohms, amps, r/min and flux ratio of the second point, its total ohms and amps, its r/min as printed.</summary>
    public static TheoryData<string, double[], double[], double, double> Pairs { get; } = new()
    {
        { "CHK-08", [250, 0.15, 110, 600], [0.15, 50, 0.0155 / 0.024], 965, 0.5 },
        { "CHK-29", [400, 0.25, 25, 1200], [3, 15, 0.7], 1545.6, 0.5 },
        { "CHK-29", [230, 0.2, 10, 1000], [2.2, 8, 0.8], 1164.5, 0.05 },
    };

    [Theory]
    [Trait("Source", "CHK-08")]
    [Trait("Source", "CHK-29")]
    [MemberData(nameof(Pairs))]
    public void SpeedAt_TwoPointsOfTheCurve_MatchesThePrintedSpeed(string entry, double[] first, double[] second, double rpm, double tolerance)
    {
        Characteristic motor = Motor(first, second);

        Assert.StartsWith("CHK-", entry, StringComparison.Ordinal);
        Assert.Equal(first[3], motor.AtAmps(first[2]).Rpm, 1e-9);
        Assert.Equal(rpm, motor.On(second[0]).AtAmps(second[1]).Rpm, tolerance);
    }

    [Theory]
    [Trait("Source", "CHK-08")]
    [Trait("Source", "CHK-29")]
    [MemberData(nameof(Pairs))]
    public void AmpsAt_PrintedSpeed_IsThePrintedCurrent(string entry, double[] first, double[] second, double rpm, double tolerance)
    {
        double amps = Motor(first, second).On(second[0]).AmpsAt(rpm * Math.PI / 30, first[2]);

        Assert.StartsWith("CHK-", entry, StringComparison.Ordinal);
        // A little speed is a little current: the flux of a series motor falls with it, so the share is of the same size.
        Assert.Equal(1, amps / second[1], 2 * tolerance / rpm);
    }

    [Fact]
    [Trait("Source", "CHK-08")]
    public void BackEmfVolts_SeriesMotor_MatchesThePrintedOnes()
    {
        Characteristic motor = Motor([250, 0.15, 110, 600], [0.15, 50, 0.0155 / 0.024]);

        Assert.Equal(233.5, motor.AtAmps(110).BackEmfVolts, 1e-9);
        Assert.Equal(242.5, motor.AtAmps(50).BackEmfVolts, 1e-9);
    }

    // Derived here from the printed pair: at 600 r/min 50 A leave 233.5 x 0.0155 / 0.024 = 150.80 V of back-EMF, so they flow
    // through 99.20 / 50 = 1.9840 ohm; cut out there, the motor alone takes its 110 A.
    [Fact]
    [Trait("Source", "CHK-08")]
    public void NextTotal_StageThatEndsAtThePrintedSpeed_LeavesTheMotorAlone()
    {
        FluxGrading grading = new(Motor([250, 0.15, 110, 600], [0.15, 50, 0.0155 / 0.024]));

        Assert.Equal(0.15, grading.NextTotal(1.9840, 110, 50), 0.0001);
    }

    // CHK-29: less current through more resistance, and still faster: developed power E I is 0.541 of the first.
    [Fact]
    [Trait("Source", "CHK-29")]
    public void TorqueAt_SeriesMotorOnAStage_GivesThePrintedPowerRatio()
    {
        Characteristic motor = Motor([400, 0.25, 25, 1200], [3, 15, 0.7]);
        OperatingPoint alone = motor.AtAmps(25), onStage = motor.On(3).AtAmps(15);

        Assert.Equal(393.75, alone.BackEmfVolts, 1e-9);
        Assert.Equal(355, onStage.BackEmfVolts, 1e-9);
        double first = alone.TorqueNewtonMetres * alone.SpeedRadPerSec, second = onStage.TorqueNewtonMetres * onStage.SpeedRadPerSec;
        Assert.Equal(0.541, second / first, 0.0005);
        Assert.True(onStage.SpeedRadPerSec > alone.SpeedRadPerSec);
    }

    [Fact]
    [Trait("Source", "CHK-10")]
    public void TorqueAt_SeriesMotorFromConstruction_MatchesTheraja()
    {
        double constant = MachineConstant.FromConstruction(4, 800, 2, 0.025);
        Characteristic motor = Characteristic.Of(SeriesFlux([0, 45, 60], [0.05, constant, 1.1 * constant]), 220, 0.6);
        OperatingPoint point = motor.AtAmps(45);

        Assert.Equal(286.5, point.TorqueNewtonMetres, 0.5);
        Assert.Equal(193, point.BackEmfVolts, 1e-9);
        Assert.Equal(289.5, point.Rpm, 0.1);
        Assert.Equal(45, motor.AmpsForTorque(point.TorqueNewtonMetres), 1e-9);
    }

    private static Characteristic Motor(double[] first, double[] second)
    {
        double constant = (first[0] - first[2] * first[1]) / (first[3] * Math.PI / 30);
        return Characteristic.Of(SeriesFlux([0, second[1], first[2]], [0.03 * constant, second[2] * constant, constant]), first[0], first[1]);
    }

    private static ArmatureFlux SeriesFlux(double[] amps, double[] constants) =>
        new(new FluxLaw(new Magnetisation(amps, constants)) { FieldShare = 0, ArmatureShare = 1 }, 0);
}
