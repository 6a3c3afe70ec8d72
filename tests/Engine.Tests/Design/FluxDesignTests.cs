using System;
using System.Linq;
using System.Threading;
using CsCheck;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>
/// Starters for machines whose flux follows the armature current. What carries no trait is derived here from
/// V - Vb - I R - k(I) w = 0 before and behind a cutout.
/// </summary>
public sealed class FluxDesignTests
{
    private static readonly Gen<DesignInput> Any = Gen.Select(
        Gen.OneOf(FluxMachines.AnyRising, FluxMachines.AnyFalling), Gen.Enum<Slack>(), Gen.Int[1, 6]).Select((input, slack, count) =>
        input with { Slack = slack, StageCount = slack == Slack.LastSection ? null : count });

    [Fact]
    public void Design_AnyComputedSections_SatisfyTheRecursion() =>
        Sample((input, design) =>
        {
            double fluxRatio = input.Flux!.ConstantAt(design.PeakAmps) / input.Flux.ConstantAt(design.SwitchingAmps);
            double driving = input.SupplyVolts - input.BrushDropVolts;
            AssertRelative(driving / design.PeakAmps, design.Stages[0].TotalOhms);
            for (int i = 1; i < design.StageCount; i++)
            {
                double before = driving - design.SwitchingAmps * design.Stages[i - 1].TotalOhms;
                Assert.Equal(driving - fluxRatio * before, design.PeakAmps * design.Stages[i].TotalOhms, 1e-9 * driving);
            }
        });

    [Fact]
    public void Design_AnyComputedSections_FallAndSumToTheStarter() =>
        Sample((_, design) =>
        {
            Assert.All(design.Stages, stage => Assert.True(stage.SectionOhms > 0));
            AssertRelative(design.Stages[0].TotalOhms - design.ArmatureOhms, design.Stages.Sum(stage => stage.SectionOhms));
        });

    [Fact]
    public void Design_AnyComputedSections_MakeEveryPeakThePeakCurrent() =>
        Sample((input, design) =>
        {
            AssertRelative(design.PeakAmps, design.Stages[0].PeakAmps);
            for (int i = 1; i < design.StageCount; i++) AssertPeak(input, design, design.Stages[i].PeakAmps, design.Stages[i].TotalOhms, design.Stages[i - 1]);
            if (design.Slack != Slack.LastSection) AssertPeak(input, design, design.FinalPeakAmps, design.ArmatureOhms, design.Stages[^1]);
            else Assert.InRange(design.FinalPeakAmps, design.SwitchingAmps, 1.2 * design.PeakAmps);
        });

    [Fact]
    public void Design_AnyCutout_MeetsTheInequalityOfTheController() =>
        Sample((input, design) =>
        {
            double driving = input.SupplyVolts - input.BrushDropVolts, atPeak = input.Flux!.ConstantAt(design.PeakAmps);
            for (int i = 0; i < design.StageCount; i++)
            {
                DesignedStage stage = design.Stages[i];
                Assert.Equal(driving - stage.VoltsLeft, atPeak * RadPerSec(stage), 1e-9 * driving);
                Assert.True(stage.VoltsLeft > 0, "the controller takes no other threshold");
                if (i + 1 < design.StageCount) Assert.Equal(design.PeakAmps * design.Stages[i + 1].TotalOhms, stage.VoltsLeft, 1e-9 * driving);
            }
        });

    [Fact]
    public void Design_AnyCutout_GivesTheBackEmfJustBefore() =>
        Sample((input, design) =>
        {
            double driving = input.SupplyVolts - input.BrushDropVolts;
            foreach (DesignedStage stage in design.Stages)
            {
                Assert.Equal(driving - stage.SwitchingAmps * stage.TotalOhms, stage.CutoutVolts, 1e-9 * driving);
                Assert.Equal(input.Flux!.ConstantAt(stage.SwitchingAmps) * RadPerSec(stage), stage.CutoutVolts, 1e-9 * driving);
                AssertRelative(stage.CutoutVolts / input.SupplyVolts, stage.CutoutFraction);
                if (stage.Stage < design.StageCount) AssertRelative(design.SwitchingAmps, stage.SwitchingAmps);
                else Assert.InRange(stage.SwitchingAmps, design.SwitchingAmps, design.PeakAmps);
            }
        });

    [Fact]
    public void Design_AnyCutout_GivesTheCurrentThatCarriesTheLoad() =>
        Sample((input, design) => Assert.All(design.Stages, stage =>
        {
            double torque = input.Load.TorqueAt(RadPerSec(stage));
            Assert.Equal(torque, input.Flux!.ConstantAt(stage.LoadAmps!.Value) * stage.LoadAmps.Value, 1e-9 * (torque + design.PeakAmps * input.Flux.ConstantAt(design.PeakAmps)));
            Assert.True(stage.LoadAmps < stage.SwitchingAmps);
        }));

    // R1 = 218/156 ohm; k(156 A) = 1.3; k(95 A) from the curve; w1 = (218 - 95 R1) / k(95 A).
    [Fact]
    public void Design_SeriesMotor_CutsOutByTheSpeedThatTheCurveGives()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { StageCount = 2, Slack = Slack.RaiseSwitchingCurrent });

        double k2 = FluxMachines.Series.ConstantAt(design.SwitchingAmps), first = 218.0 / 156;
        double w1 = (218 - design.SwitchingAmps * first) / k2;
        Assert.Equal(w1 * 30 / Math.PI, design.Stages[0].CutoutRpm!.Value, 1e-6);
        Assert.Equal((218 - 1.3 * w1) / 156, design.Stages[1].TotalOhms, 1e-9);
        Assert.Equal(1, design.Stages[1].CutoutVolts / (218 - design.SwitchingAmps * design.Stages[1].TotalOhms), 1e-9);
        // Its own law of constant flux would be another one.
        Assert.True(Math.Abs(design.SwitchingAmps / StageGrading.RaisedSwitchingAmps(218, 0.18, 156, 2) - 1) > 0.05);
    }

    // With both currents kept the last of the two stages has little left to cut out: k(156 A) w would pass the supply when the
    // current has fallen to 95 A. The controller waits for 218 - 95 x 0.18 = 200.9 V then, and no longer.
    [Fact]
    public void Design_RisingFluxWithMuchSlack_CutsTheLastStageOutEarlyAndSaysSo()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput);

        DesignedStage last = design.Stages[^1];
        Assert.Equal(Slack.LastSection, design.Slack);
        Assert.Equal(95 * 0.18, last.VoltsLeft, 1e-9);
        Assert.Equal(200.9 / 1.3 * 30 / Math.PI, last.CutoutRpm!.Value, 1e-6);
        Assert.InRange(last.SwitchingAmps, 95, 156);
        Assert.InRange(design.FinalPeakAmps, 95, 156);
        string warning = Assert.Single(design.Warnings, text => text.Contains("before the switching current", StringComparison.Ordinal));
        Assert.Contains($"Stage {last.Stage} is cut out at {Text.Number(last.SwitchingAmps)} A", warning, StringComparison.Ordinal);
        Assert.Contains("95 A", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_LowerPeakOfASeriesMotor_KeepsTheSwitchingCurrent()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { PeakAmps = null, StageCount = 3 });

        Assert.Equal(Slack.LowerPeakCurrent, design.Slack);
        Assert.Equal(95, design.SwitchingAmps);
        Assert.InRange(design.PeakAmps, 95, 156);
        Assert.Equal(1, design.FinalPeakAmps / design.PeakAmps, 1e-9);
    }

    [Fact]
    public void Design_TooFewStages_SolvesTheLastPeakOnTheCurve()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { StageCount = 1, Slack = Slack.LastSection });

        double speed = RadPerSec(design.Stages[0]);
        Assert.True(design.FinalPeakAmps > 156);
        Assert.Equal(218, design.FinalPeakAmps * 0.18 + FluxMachines.Series.ConstantAt(design.FinalPeakAmps) * speed, 1e-9);
        Assert.Contains(design.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
    }

    [Fact]
    public void Design_GivenSectionsAndSwitchingCurrent_SolvesEveryPeakOnTheCurve()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { PeakAmps = null, SwitchingAmps = 100, SectionOhms = [0.50, 0.45, 0.22] });

        double[] totals = [1.35, 0.85, 0.40, 0.18];
        double speed = 0;
        for (int i = 0; i < 3; i++)
        {
            DesignedStage stage = design.Stages[i];
            Assert.Equal(totals[i], stage.TotalOhms, 1e-12);
            Assert.Equal(218, stage.PeakAmps * totals[i] + FluxMachines.Series.ConstantAt(stage.PeakAmps) * speed, 1e-9);
            // k(100 A) = 1.15 is a point of the curve.
            if (i < 2) Assert.Equal((218 - 100 * totals[i]) / 1.15, RadPerSec(stage), 1e-9);
            speed = RadPerSec(stage);
        }

        Assert.Equal(design.WorstPeakAmps, design.PeakAmps);
    }

    // As at constant flux: the later of "fallen to I2" and "the next peak within I1".
    [Fact]
    public void Design_GivenSectionsAndBothCurrents_HoldsTheLaterCutout()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { SectionOhms = [0.42, 0.62, 0.18] });

        // Totals 1.4, 0.98, 0.36, 0.18. Fallen to 95 A in stage 1: (218 - 133) / k(95 A) = 75.7 rad/s; a next peak of 156 A:
        // (218 - 156 x 0.98) / 1.3 = 50.1. In stage 2: 124.9 / k = 111.2 rad/s against (218 - 156 x 0.36) / 1.3 = 124.5.
        double atSwitching = FluxMachines.Series.ConstantAt(95);
        Assert.Equal(85 / atSwitching, RadPerSec(design.Stages[0]), 1e-9);
        Assert.Equal((218 - 156 * 0.36) / 1.3, RadPerSec(design.Stages[1]), 1e-9);
        Assert.Equal(156 * 0.36, design.Stages[1].VoltsLeft, 1e-9);
        Assert.Equal(156, design.Stages[2].PeakAmps, 1e-9);
        Assert.True(design.Stages[1].SwitchingAmps < 95);
        Assert.True(design.Stages[1].PeakAmps < 156);
    }

    // In stage 2 the next peak would be kept at 124.5 rad/s and some 83 A, where k(I) I is some 90 N m.
    [Theory]
    [InlineData(80, true)]
    [InlineData(95, false)]
    public void Design_GivenSectionsWhereTheLoadHoldsBeforeThePeakIsKept_FallsBackToTheSwitchingCurrent(double loadTorque, bool isKept)
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { SectionOhms = [0.42, 0.62, 0.18], Load = new Load(loadTorque, 0, 0) });

        Assert.Equal(isKept, design.Stages[2].PeakAmps <= 156 * (1 + 1e-9));
        Assert.Equal(!isKept, Math.Abs(design.Stages[1].SwitchingAmps - 95) < 1e-9);
    }

    [Fact]
    public void Design_HandThresholds_AreBackEmfsJustBeforeTheCutout()
    {
        double[] totals = [1.4, 0.7, 0.35, 0.18], cutouts = [90, 155, 185];
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { SwitchingAmps = null, SectionOhms = [0.7, 0.35, 0.17], CutoutVolts = cutouts });

        for (int i = 0; i < 3; i++)
        {
            DesignedStage stage = design.Stages[i];
            double amps = (218 - cutouts[i]) / totals[i];
            Assert.Equal(cutouts[i], stage.CutoutVolts, 1e-9);
            Assert.Equal(amps, stage.SwitchingAmps, 1e-9);
            Assert.Equal(cutouts[i] / FluxMachines.Series.ConstantAt(amps), RadPerSec(stage), 1e-9);
            Assert.Equal(218 - 1.3 * RadPerSec(stage), stage.VoltsLeft, 1e-9);
        }
    }

    [Fact]
    public void Design_HandThresholdsWithoutALimit_AreHeldByTheLargestPeak()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with
        {
            PeakAmps = null,
            SwitchingAmps = null,
            SectionOhms = [0.7, 0.35, 0.17],
            CutoutVolts = [90, 155, 185],
        });

        double atPeak = FluxMachines.Series.ConstantAt(design.PeakAmps);
        Assert.Equal(design.WorstPeakAmps, design.PeakAmps);
        Assert.All(design.Stages, stage => Assert.Equal(218 - atPeak * RadPerSec(stage), stage.VoltsLeft, 1e-9));
    }

    // A series motor needs no constant of its own beside its curve.
    [Fact]
    public void Design_Curve_NeedsNoMachineConstant()
    {
        StarterDesign design = StarterDesigner.Design(FluxMachines.SeriesInput with { SwitchingAmps = null, StageCount = 2 });

        Assert.All(design.Stages, stage => Assert.True(stage is { CutoutRpm: > 0, LoadAmps: 0, ExpectedSeconds: > 0, EnergyJoules: > 0 }));
        Assert.Empty(design.Warnings);
    }

    // Not every set of random currents and counts is a starter; FluxDesignErrorTests says which are not. Most of them are.
    private static void Sample(Action<DesignInput, StarterDesign> check)
    {
        int designed = 0, refused = 0;
        Any.Sample(input =>
        {
            StarterDesign design;
            try
            {
                design = StarterDesigner.Design(input);
            }
            catch (DesignException)
            {
                Interlocked.Increment(ref refused);
                return;
            }

            Interlocked.Increment(ref designed);
            check(input, design);
        });
        Assert.True(designed > 2 * refused, $"{designed} of {designed + refused}");
    }

    // Where the flux falls by much, the current can come to rest before I1: at a root that it cannot leave upwards, and said so.
    private static void AssertPeak(DesignInput input, StarterDesign design, double peakAmps, double totalOhms, DesignedStage before)
    {
        double driving = input.SupplyVolts - input.BrushDropVolts;
        double VoltsOver(double amps) => driving - amps * totalOhms - input.Flux!.ConstantAt(amps) * RadPerSec(before);
        Assert.Equal(0, VoltsOver(peakAmps), 1e-9 * driving);
        bool isFluxRising = input.Flux!.ConstantAt(design.PeakAmps) >= input.Flux.ConstantAt(design.SwitchingAmps);
        if (isFluxRising || peakAmps > design.PeakAmps * (1 - 2e-4))
        {
            AssertRelative(design.PeakAmps, peakAmps);
            return;
        }

        Assert.InRange(peakAmps, before.SwitchingAmps, design.PeakAmps);
        Assert.True(VoltsOver(peakAmps * (1 + 1e-5)) < 0);
        Assert.Contains(design.Warnings, text => text.Contains("comes to rest", StringComparison.Ordinal));
    }

    private static double RadPerSec(DesignedStage stage) => stage.CutoutRpm!.Value * Math.PI / 30;

    private static void AssertRelative(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-9);
}
