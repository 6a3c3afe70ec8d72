using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Published;

/// <summary>The designer against printed starters. Sources: tests/published/SOURCES.md, by the number in each trait.</summary>
public sealed class StarterDesignTests
{
    private static readonly DesignInput Chapman = new()
    {
        SupplyVolts = 250,
        ArmatureOhms = 0.05,
        RatedAmps = 350,
        PeakAmps = 700,
        SwitchingAmps = 350,
    };

    [Fact]
    [Trait("Source", "CHK-01")]
    public void Design_ChapmanThreeStages_MatchesThePrintedStarter()
    {
        StarterDesign design = StarterDesigner.Design(Chapman);

        Assert.Equal(0.357, design.Stages[0].TotalOhms, 0.0005);
        Assert.Equal(2.84, design.StageCountExact, 0.005);
        Assert.Equal(3, design.StageCount);
        AssertEach([125, 187.5, 218.75], design.Stages.Select(stage => stage.CutoutVolts), 0.05);
        AssertEach([0.1786, 0.0893, 0.0393], design.Stages.Select(stage => stage.SectionOhms), 0.0001);
    }

    [Fact]
    [Trait("Source", "CHK-01")]
    public void Design_ChapmanCountRoundedUp_LastPeakIsSmaller()
    {
        StarterDesign design = StarterDesigner.Design(Chapman);

        Assert.Equal(Slack.LastSection, design.Slack);
        AssertEach([700, 700, 700], design.Stages.Select(stage => stage.PeakAmps), 0.5);
        Assert.Equal(625, design.FinalPeakAmps, 0.5);
        Assert.Equal(700, design.WorstPeakAmps, 0.5);
        Assert.Equal(5000, design.DirectStartAmps, 0.5);
    }

    [Fact]
    [Trait("Source", "CHK-01")]
    public void From_ChapmanThreeStages_HandsTheThresholdsToTheController()
    {
        Machine machine = new(2.5, 0.05, 0, 0, 4);

        Settings settings = ControllerSettings.From(StarterDesigner.Design(Chapman), machine, new ControlSetup { InstantTripAmps = 1400 });

        // Threshold = supply less volts left: 125, 187.5 and 218.75 V.
        AssertEach([125, 62.5, 31.25], settings.VoltsLeft.Take(3).Select(volts => (double)volts), 0.05);
        AssertEach([0.3571, 0.1786, 0.0893, 0.05], settings.StageOhms.Take(4).Select(ohms => (double)ohms), 0.0001);
        Assert.Equal(SettingId.None, settings.FirstProblem());
    }

    [Fact]
    [Trait("Source", "CHK-02")]
    public void Design_SixSectionsAndPeak_MatchesTheraja()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 220, ArmatureOhms = 0.5, PeakAmps = 40, StageCount = 6 });

        Assert.Equal(5.5, design.Stages[0].TotalOhms, 1e-12);
        Assert.Equal(1.4914, design.PeakAmps / design.SwitchingAmps, 0.0005);
        Assert.Equal(26.82, design.SwitchingAmps, 0.02);
        AssertEach([1.812, 1.215, 0.815, 0.546, 0.3666, 0.2454], design.Stages.Select(stage => stage.SectionOhms), 0.002);
    }

    [Fact]
    [Trait("Source", "CHK-03")]
    public void Design_EightSectionsFromTwoCurrents_MatchesTheraja()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 250, ArmatureOhms = 0.125, PeakAmps = 200, SwitchingAmps = 150 });

        Assert.Equal(8.004, design.StageCountExact, 0.001);
        Assert.Equal(8, design.StageCount);
        AssertEach([1.25, 0.938, 0.703, 0.527, 0.395, 0.297, 0.222, 0.167], design.Stages.Select(stage => stage.TotalOhms), 0.0015);
        AssertEach([0.3125, 0.2344, 0.1758, 0.1318, 0.0989, 0.0742, 0.0556, 0.0419], design.Stages.Select(stage => stage.SectionOhms), 0.0005);
    }

    [Fact]
    [Trait("Source", "CHK-03")]
    public void Design_CountALittleOverEight_SaysByHowMuchThePeakIsPassed()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 250, ArmatureOhms = 0.125, PeakAmps = 200, SwitchingAmps = 150 });

        Assert.Equal(200.2, design.FinalPeakAmps, 0.05);
        string warning = Assert.Single(design.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
        Assert.Contains("200.2 A", warning, StringComparison.Ordinal);
        Assert.Contains("8 stages are taken for 8.004", warning, StringComparison.Ordinal);
        int percent = warning.IndexOf(" %", StringComparison.Ordinal);
        double excess = double.Parse(warning[..percent].Split(' ')[^1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(0.11, excess, 0.005);
    }

    [Fact]
    [Trait("Source", "CHK-04")]
    public void Design_WorkedFourStages_MatchesTheClosedForm()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 120, ArmatureOhms = 0.4, PeakAmps = 30, StageCount = 4 });

        Assert.Equal(16.870, design.SwitchingAmps, 0.001);
        Assert.Equal(1.778279, design.PeakAmps / design.SwitchingAmps, 1e-6);
        AssertEach([1.7507, 0.9845, 0.5536, 0.3113], design.Stages.Select(stage => stage.SectionOhms), 0.0001);
        AssertEach([0.4377, 0.6838, 0.8222, 0.9000], design.Stages.Select(stage => stage.CutoutFraction), 0.0001);
    }

    [Fact]
    [Trait("Source", "CHK-04")]
    public void Design_AnyEqualStages_KeepsTheIdentities() =>
        Gen.Select(Gen.Double[10, 1000], Gen.Double[1, 1000], Gen.Double[1.1, 60], Gen.Int[1, 16]).Sample((volts, peak, span, count) =>
        {
            double ratio = Math.Pow(span, 1.0 / count), armature = volts / peak / span, topSpeed = 100;
            StarterDesign design = StarterDesigner.Design(new DesignInput
            {
                SupplyVolts = volts,
                ArmatureOhms = armature,
                PeakAmps = peak,
                StageCount = count,
                MachineConstant = volts / topSpeed,
            });

            Assert.Equal(count, design.Stages.Count);
            AssertRelative(volts / peak, design.Stages[0].TotalOhms);
            AssertRelative(peak / ratio, design.SwitchingAmps);
            AssertRelative(span, Math.Pow(design.PeakAmps / design.SwitchingAmps, count));
            AssertRelative(volts / peak - armature, design.Stages.Sum(stage => stage.SectionOhms));
            AssertRelative(peak, design.FinalPeakAmps);
            for (int i = 0; i < count; i++)
            {
                DesignedStage stage = design.Stages[i];
                double fraction = 1 - Math.Pow(ratio, -(i + 1));
                double after = i + 1 < count ? design.Stages[i + 1].TotalOhms : armature;
                AssertRelative(ratio, stage.TotalOhms / after);
                AssertRelative(peak, stage.PeakAmps);
                AssertRelative(fraction, stage.CutoutFraction);
                AssertRelative(fraction * topSpeed * 30 / Math.PI, stage.CutoutRpm!.Value);
                AssertRelative(peak * after, stage.VoltsLeft);
                if (i > 0) AssertRelative(ratio, design.Stages[i - 1].SectionOhms / stage.SectionOhms);
            }
        });

    [Fact]
    [Trait("Source", "CHK-35")]
    public void Design_UsualClosingPoints_AreWithinFivePercentOfSupply()
    {
        StarterDesign design = StarterDesigner.Design(Chapman);

        AssertEach([0.5, 0.8, 0.9], design.Stages.Select(stage => stage.CutoutFraction), 0.05 + 1e-12);
    }

    [Fact]
    [Trait("Source", "CHK-35")]
    public void Design_CoilAcrossTheArmature_SeesTheDropAtStandstill()
    {
        StarterDesign design = StarterDesigner.Design(Chapman);

        double coilVolts = design.Stages[0].PeakAmps * design.ArmatureOhms;

        Assert.Equal(35, coilVolts, 0.05);
        Assert.Equal(0.14, coilVolts / design.SupplyVolts, 0.0005);
    }

    [Fact]
    [Trait("Source", "CHK-05")]
    public void Design_SingleResistance_MatchesTheraja()
    {
        double fullLoad = MachineConstant.RatedAmps(7460, 200, 0.85);
        StarterDesign start = StarterDesigner.Design(new DesignInput { SupplyVolts = 200, ArmatureOhms = 0.25, PeakAmps = 1.5 * fullLoad, StageCount = 1 });
        StarterDesign atFullLoad = StarterDesigner.Design(new DesignInput { SupplyVolts = 200, ArmatureOhms = 0.25, SwitchingAmps = fullLoad, SectionOhms = [start.Stages[0].SectionOhms] });

        Assert.Equal(43.88, fullLoad, 0.01);
        Assert.Equal(65.83, start.PeakAmps, 0.02);
        Assert.Equal(2.788, start.Stages[0].SectionOhms, 0.002);
        Assert.Equal(66.7, atFullLoad.Stages[0].CutoutVolts, 0.05);
    }

    [Fact]
    [Trait("Source", "CHK-05")]
    public void FromPlate_SecondSetAtFullLoad_GivesThePrintedEmf()
    {
        double armatureAmps = MachineConstant.RatedAmps(7460, 440, 0.85) - 440.0 / 200;

        // At 1 rad/s the constant is the EMF itself.
        Assert.Equal(425.8, MachineConstant.FromPlate(440, armatureAmps, 1, 0.8, 0), 0.05);
    }

    [Fact]
    [Trait("Source", "CHK-06")]
    public void Design_HandbookMotor_MatchesDirectAndLimitedStart()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 260, ArmatureOhms = 0.4, RatedAmps = 50, PeakAmps = 1.25 * 50, StageCount = 1 });

        Assert.Equal(650, design.DirectStartAmps, 0.5);
        Assert.Equal(3.76, design.Stages[0].SectionOhms, 0.005);
    }

    [Fact]
    [Trait("Source", "CHK-33")]
    public void Design_ThreeSectionsAndPeak_MatchesSalam()
    {
        StarterDesign design = StarterDesigner.Design(Salam);

        Assert.Equal(2.676, design.PeakAmps / design.SwitchingAmps, 0.001);
        Assert.Equal(4.8, design.Stages[0].SectionOhms, 0.05);
        Assert.Equal(1.8, design.Stages[1].SectionOhms, 0.05);
        Assert.Equal(0.67, design.Stages[2].SectionOhms, 0.005);
        Assert.Equal(11.21, design.SwitchingAmps, 0.01);
    }

    [Theory]
    [Trait("Source", "CHK-33")]
    [InlineData(10.0, false)]
    [InlineData(10.5, true)]
    public void Design_LowerCurrentNearTheLoad_Warns(double loadAmps, bool warned)
    {
        StarterDesign design = StarterDesigner.Design(Salam with { MachineConstant = 2, Load = new Load(2 * loadAmps, 0, 0) });

        Assert.Equal(warned, design.Warnings.Any(text => text.Contains("may stick", StringComparison.Ordinal)));
    }

    [Fact]
    [Trait("Source", "CHK-33")]
    public void Design_LoadAboveTheLowerCurrent_IsAnErrorThatNamesTheStage()
    {
        DesignException error = Assert.Throws<DesignException>(() =>
            StarterDesigner.Design(Salam with { MachineConstant = 2, Load = new Load(2 * 12, 0, 0) }));

        Assert.Equal(DesignQuantity.Stages, error.Quantity);
        Assert.Contains("11.21 A in stage 1", error.Message, StringComparison.Ordinal);
        Assert.Contains("12 A", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Source", "CHK-34")]
    public void Design_HalfAsMuchAgainAsFullLoad_MatchesKimberly()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 230, ArmatureOhms = 0.15, RatedAmps = 74, PeakAmps = 1.5 * 74, StageCount = 1 });

        Assert.Equal(1.92, design.Stages[0].SectionOhms, 0.005);
    }

    private static DesignInput Salam { get; } = new() { SupplyVolts = 230, ArmatureOhms = 0.4, PeakAmps = 30, StageCount = 3 };

    private static void AssertEach(double[] expected, IEnumerable<double> actual, double tolerance)
    {
        double[] found = [.. actual];
        Assert.Equal(expected.Length, found.Length);
        for (int i = 0; i < found.Length; i++) Assert.Equal(expected[i], found[i], tolerance);
    }

    private static void AssertRelative(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-9);
}
