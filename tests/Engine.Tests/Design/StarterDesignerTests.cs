using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

public sealed class StarterDesignerTests
{
    private static readonly DesignInput Input = new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.18,
        BrushDropVolts = 2,
        PeakAmps = 156,
        SwitchingAmps = 95,
    };

    // ln(R1/Ra) / ln(I1/I2) = 4.132 for this motor.
    private const double FirstOhms = 218.0 / 156;

    [Fact]
    public void Design_LastSectionTakesTheSlack_KeepsBothCurrents()
    {
        StarterDesign design = StarterDesigner.Design(Input with { Slack = Slack.LastSection });

        Assert.Equal(5, design.StageCount);
        Assert.Equal(Math.Log(FirstOhms / 0.18) / Math.Log(156.0 / 95), design.StageCountExact, 1e-12);
        Assert.Equal(156, design.PeakAmps);
        Assert.Equal(95, design.SwitchingAmps);
        Assert.All(design.Stages, stage => Assert.Equal(95, stage.SwitchingAmps, 1e-9));
        Assert.All(design.Stages, stage => Assert.Equal(156, stage.PeakAmps, 1e-9));
        Assert.InRange(design.FinalPeakAmps, 95, 156);
        Assert.Equal(FirstOhms - 0.18, design.Stages.Sum(stage => stage.SectionOhms), 1e-12);
    }

    [Fact]
    public void Design_RaisedSwitchingCurrent_MakesEveryPeakTheSame()
    {
        StarterDesign design = StarterDesigner.Design(Input with { Slack = Slack.RaiseSwitchingCurrent });

        Assert.Equal(5, design.StageCount);
        Assert.Equal(156 * Math.Pow(0.18 / FirstOhms, 0.2), design.SwitchingAmps, 1e-9);
        Assert.True(design.SwitchingAmps > 95);
        Assert.All(design.Stages, stage => Assert.Equal(156, stage.PeakAmps, 1e-9));
        Assert.Equal(156, design.FinalPeakAmps, 1e-9);
    }

    [Fact]
    public void Design_LoweredPeakCurrent_MakesEveryPeakTheSame()
    {
        StarterDesign design = StarterDesigner.Design(Input with { Slack = Slack.LowerPeakCurrent });

        Assert.Equal(5, design.StageCount);
        Assert.Equal(95, design.SwitchingAmps);
        Assert.Equal(1, Math.Pow(design.PeakAmps, 6) / (Math.Pow(95, 5) * 218 / 0.18), 1e-9);
        Assert.True(design.PeakAmps < 156);
        Assert.All(design.Stages, stage => Assert.Equal(design.PeakAmps, stage.PeakAmps, 1e-9));
        Assert.Equal(design.PeakAmps, design.FinalPeakAmps, 1e-9);
    }

    [Theory]
    [InlineData(156.0, null, Slack.RaiseSwitchingCurrent)]
    [InlineData(null, 95.0, Slack.LowerPeakCurrent)]
    [InlineData(156.0, 95.0, Slack.LastSection)]
    public void Design_NoSlackGiven_TakesTheOneThatTheCurrentsAllow(double? peakAmps, double? switchingAmps, Slack slack) =>
        Assert.Equal(slack, StarterDesigner.Design(Input with { PeakAmps = peakAmps, SwitchingAmps = switchingAmps, StageCount = 5 }).Slack);

    [Theory]
    [InlineData(2.9, 3)]
    [InlineData(3.0, 3)]
    [InlineData(3.019, 3)]
    [InlineData(3.021, 4)]
    [InlineData(0.4, 1)]
    [InlineData(8.004, 8)]
    public void WholeCount_AroundAWholeNumber_HasTheAllowance(double exact, int count) =>
        Assert.Equal(count, StageGrading.WholeCount(exact));

    [Fact]
    public void Design_RaisedCurrentFallsInstead_Warns()
    {
        StarterDesign design = StarterDesigner.Design(Input with { StageCount = 3, Slack = Slack.RaiseSwitchingCurrent });

        string warning = Assert.Single(design.Warnings, text => text.Contains("falls to", StringComparison.Ordinal));
        Assert.Contains(Text.Number(design.SwitchingAmps) + " A instead of 95 A", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_PeakFarAboveRated_Warns() =>
        Assert.Contains(
            StarterDesigner.Design(Input with { RatedAmps = 60 }).Warnings,
            text => text.Contains("2.6 times the rated current", StringComparison.Ordinal));

    [Fact]
    public void Design_NoConstant_LeavesSpeedsAndTimesOutAndSaysSo()
    {
        StarterDesign design = StarterDesigner.Design(Input);

        Assert.All(design.Stages, stage => Assert.True(stage is { CutoutRpm: null, LoadAmps: null, ExpectedSeconds: null, EnergyJoules: null }));
        Assert.Contains("motor.constant", Assert.Single(design.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void Design_NoInertia_LeavesTimesOutAndSaysSo()
    {
        StarterDesign design = StarterDesigner.Design(Input with { MachineConstant = 1.69 });

        Assert.All(design.Stages, stage => Assert.True(stage is { CutoutRpm: > 0, LoadAmps: 0, ExpectedSeconds: null, EnergyJoules: null }));
        Assert.Contains("motor.inertia", Assert.Single(design.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void Design_GivenSectionsAndSwitchingCurrent_RechecksThePeaks()
    {
        StarterDesign design = StarterDesigner.Design(Input with { PeakAmps = null, SectionOhms = [0.56, 0.33, 0.22] });

        double[] totals = [1.29, 0.73, 0.40, 0.18];
        Assert.Equal(3, design.StageCount);
        Assert.Null(design.Slack);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(totals[i], design.Stages[i].TotalOhms, 1e-12);
            Assert.Equal(218 - 95 * totals[i], design.Stages[i].CutoutVolts, 1e-9);
            Assert.Equal(i == 0 ? 218 / 1.29 : 95 * totals[i - 1] / totals[i], design.Stages[i].PeakAmps, 1e-9);
        }

        Assert.Equal(95 * 0.40 / 0.18, design.FinalPeakAmps, 1e-9);
        Assert.Equal(design.WorstPeakAmps, design.PeakAmps);
    }

    [Fact]
    public void Design_GivenSectionsAndBothCurrents_HoldsTheLaterCutout()
    {
        StarterDesign design = StarterDesigner.Design(Input with { SectionOhms = [0.7, 0.38, 0.14] });

        // Totals 1.4, 0.7, 0.32, 0.18: fallen to 95 A leaves 133, 66.5, 30.4 V; a peak of 156 A allows 109.2, 49.92, 28.08 V.
        Assert.Equal(109.2, design.Stages[0].VoltsLeft, 1e-9);
        Assert.Equal(49.92, design.Stages[1].VoltsLeft, 1e-9);
        Assert.Equal(28.08, design.Stages[2].VoltsLeft, 1e-9);
        Assert.Equal(156, design.WorstPeakAmps, 1e-9);
        Assert.DoesNotContain(design.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
    }

    [Fact]
    public void Design_GivenSectionsTooSmall_WarnsOfTheFirstPeak()
    {
        StarterDesign design = StarterDesigner.Design(Input with { SectionOhms = [0.5, 0.3, 0.15] });

        Assert.Equal(218 / 1.13, design.Stages[0].PeakAmps, 1e-9);
        string warning = Assert.Single(design.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
        Assert.Contains("192.9 A", warning, StringComparison.Ordinal);
        Assert.Contains("156 A", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_HandThresholds_KeepsThemAndWarnsOfTheirPeaks()
    {
        StarterDesign design = StarterDesigner.Design(Input with { SwitchingAmps = null, SectionOhms = [0.7, 0.35, 0.17], CutoutVolts = [90, 150, 190] });

        double[] totals = [1.4, 0.7, 0.35, 0.18], cutouts = [90, 150, 190];
        double[] peaks = [218 / 1.4, 128 / 0.7, 68 / 0.35];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(cutouts[i], design.Stages[i].CutoutVolts, 1e-9);
            Assert.Equal(cutouts[i] / 220.0, design.Stages[i].CutoutFraction, 1e-12);
            Assert.Equal(peaks[i], design.Stages[i].PeakAmps, 1e-9);
            Assert.Equal(totals[i], design.Stages[i].TotalOhms, 1e-12);
        }

        Assert.Equal(28 / 0.18, design.FinalPeakAmps, 1e-9);
        Assert.Contains(design.Warnings, text => text.Contains("given sections or thresholds", StringComparison.Ordinal));
    }

    [Fact]
    public void Design_ExpectedEnergy_IsTheSectionsShareOfEveryStageBefore() =>
        Gen.Select(Rigs.Any, Gen.Bool).Sample((rig, loaded) =>
        {
            Rig designed = rig with { DesignLoad = loaded ? rig.Load : Load.None, Supply = rig.Supply with { SourceOhms = 0 } };
            StarterDesign design = designed.Design();

            // By small steps in speed: I^2 R of a section while it is in, for as long as the net torque takes.
            double k = rig.Machine.Constant, squares = 0, from = 0;
            foreach (DesignedStage stage in design.Stages)
            {
                double to = stage.CutoutVolts / k, seconds = 0;
                const int Steps = 4000;
                for (int n = 0; n < Steps; n++)
                {
                    double speed = from + (n + 0.5) * (to - from) / Steps;
                    double amps = (rig.Supply.OpenCircuitVolts - rig.Machine.BrushDropVolts - k * speed) / stage.TotalOhms;
                    double dt = rig.Machine.InertiaKgM2 * (to - from) / Steps / (k * amps - designed.DesignLoad.TorqueAt(speed));
                    seconds += dt;
                    squares += dt * amps * amps;
                }

                Assert.Equal(1, stage.ExpectedSeconds!.Value / seconds, 1e-5);
                Assert.Equal(1, stage.EnergyJoules!.Value / (squares * stage.SectionOhms), 1e-5);
                from = to;
            }
        }, iter: 40);
}
