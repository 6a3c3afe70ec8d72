using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>Times and heat of stages at a flux that follows the current, against an integration over time of our own.</summary>
public sealed class FluxTimingTests
{
    [Fact]
    public void Design_AnyStage_LastsAsLongAsAnIntegrationOverTime() =>
        Gen.OneOf(FluxMachines.AnyRising, FluxMachines.AnyFalling).Sample(
            input =>
            {
                StarterDesign design;
                try
                {
                    design = StarterDesigner.Design(input with { StageCount = 3, Slack = Slack.RaiseSwitchingCurrent });
                }
                catch (DesignException)
                {
                    return;
                }

                // Halving finds one current of several: it is no judge where a falling flux has more than one at a speed.
                if (design.Stages.Any(stage => IsAmbiguous(input, stage))) return;
                double speed = 0, squares = 0;
                foreach (DesignedStage stage in design.Stages)
                {
                    double joules;
                    (speed, joules) = RungeKutta(input, stage.TotalOhms, speed, stage.ExpectedSeconds!.Value);
                    squares += joules;
                    Assert.Equal(1, speed * 30 / Math.PI / stage.CutoutRpm!.Value, 1e-5);
                    Assert.Equal(1, stage.EnergyJoules!.Value / (squares * stage.SectionOhms), 1e-4);
                    speed = stage.CutoutRpm.Value * Math.PI / 30;
                }
            },
            iter: 60);

    // 60 A of the series motor give 0.9 x 60 = 54 N m at any speed: a load of 54 N m holds it where the current is 60 A.
    [Theory]
    [InlineData(53.9, true)]
    [InlineData(54.1, false)]
    public void Of_LoadAtTheTorqueOfTheCutout_DecidesWhetherItEnds(double loadTorque, bool ends)
    {
        Characteristic motor = Characteristic.Of(FluxMachines.Series, 218, 0.5);
        double to = motor.AtAmps(60).SpeedRadPerSec, peak = motor.AmpsAt(50, 0);

        (double seconds, double squares) = StageTiming.Of(motor, 2.5, new Load(loadTorque, 0, 0), 50, to, peak);

        Assert.Equal(ends, double.IsFinite(seconds));
        Assert.Equal(ends, double.IsFinite(squares));
    }

    private static bool IsAmbiguous(DesignInput input, DesignedStage stage)
    {
        double driving = input.SupplyVolts - input.BrushDropVolts, most = driving / stage.TotalOhms;
        double speed = stage.CutoutRpm!.Value * Math.PI / 30;
        // One current at every speed of the stage: at its highest, the volts over still fall with every ampere.
        double before = double.PositiveInfinity;
        for (int i = 0; i <= 400; i++)
        {
            double amps = most * i / 400, over = driving - amps * stage.TotalOhms - input.Flux!.ConstantAt(amps) * speed;
            if (over >= before) return true;
            before = over;
        }

        return false;
    }

    // The classical method of order 4, any book on numerics; the current by halving.
    private static (double Speed, double SquareAmpSeconds) RungeKutta(DesignInput input, double totalOhms, double speed, double seconds)
    {
        const int Steps = 400;
        double dt = seconds / Steps, squares = 0;
        double AmpsAt(double w)
        {
            double low = 0, high = (input.SupplyVolts - input.BrushDropVolts) / totalOhms;
            for (int i = 0; i < 52; i++)
            {
                double middle = (low + high) / 2;
                if (input.SupplyVolts - input.BrushDropVolts - middle * totalOhms > input.Flux!.ConstantAt(middle) * w) low = middle;
                else high = middle;
            }

            return low;
        }

        double Acceleration(double w)
        {
            double amps = AmpsAt(w);
            return (input.Flux!.ConstantAt(amps) * amps - input.Load.TorqueAt(w)) / input.InertiaKgM2!.Value;
        }

        for (int step = 0; step < Steps; step++)
        {
            double a = Acceleration(speed), b = Acceleration(speed + dt / 2 * a), c = Acceleration(speed + dt / 2 * b), d = Acceleration(speed + dt * c);
            double before = AmpsAt(speed), half = AmpsAt(speed + dt / 4 * (a + b));
            speed += dt / 6 * (a + 2 * b + 2 * c + d);
            double after = AmpsAt(speed);
            squares += dt / 6 * (before * before + 4 * half * half + after * after);
        }

        return (speed, squares);
    }
}
