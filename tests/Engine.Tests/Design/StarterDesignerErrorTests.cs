using System;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>Starters that cannot be: each names the quantity, what was found and what is allowed, both with numbers.</summary>
public sealed class StarterDesignerErrorTests
{
    private static readonly DesignInput Input = new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.18,
        BrushDropVolts = 2,
        MachineConstant = 1.69,
        InertiaKgM2 = 2.5,
        RatedAmps = 78,
        PeakAmps = 156,
        SwitchingAmps = 95,
    };

    [Fact]
    public void Design_PeakAboveTheMotorsOwn_NeedsNoStarter() =>
        // (220 - 2) / 0.18 = 1211 A.
        AssertError(Input with { PeakAmps = 1300 }, DesignQuantity.PeakCurrent, "1300 A", "1211 A", "0 stages");

    [Fact]
    public void Design_SwitchingAloneAboveTheMotorsOwn_NeedsNoStarter() =>
        AssertError(Input with { PeakAmps = null, SwitchingAmps = 1300, StageCount = 2 }, DesignQuantity.SwitchingCurrent, "1300 A", "1211 A", "0 stages");

    [Fact]
    public void Design_PeakBelowRated_IsAnError() =>
        AssertError(Input with { PeakAmps = 70, SwitchingAmps = 60 }, DesignQuantity.PeakCurrent, "70 A", "78 A");

    [Theory]
    [InlineData(156)]
    [InlineData(170)]
    public void Design_SwitchingNotBelowPeak_IsAnError(double switchingAmps) =>
        AssertError(Input with { SwitchingAmps = switchingAmps }, DesignQuantity.SwitchingCurrent, $"{switchingAmps} A", "156 A");

    [Fact]
    public void Design_LoadHoldsAgainstThePeak_IsAnError() =>
        // 300 N m / 1.69 = 177.5 A.
        AssertError(Input with { Load = new Load(300, 0, 0) }, DesignQuantity.PeakCurrent, "156 A", "177.5 A");

    [Theory]
    [InlineData(170, 0, 1)]
    [InlineData(0, 0.02, 3)]
    public void Design_SwitchingBelowTheLoad_NamesTheStage(double constant, double fan, int stage)
    {
        DesignException error = AssertError(Input with { Load = new Load(constant, 0, fan) }, DesignQuantity.SwitchingCurrent, "95 A");

        string expected = $"in stage {stage}, but the load takes ";
        Assert.Contains(expected, error.Found, StringComparison.Ordinal);
        double found = double.Parse(error.Found.Split(expected)[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"above {Text.Number(found)} A", error.Allowed, StringComparison.Ordinal);
        Assert.InRange(found, 95, 156);
    }

    [Fact]
    public void Design_LimitsVeryClose_NeedsMoreStagesThanThereAre() =>
        // ln(7.764) / ln(156/140) = 18.9.
        AssertError(Input with { SwitchingAmps = 140 }, DesignQuantity.SwitchingCurrent, "19 stages", "16 stages");

    [Fact]
    public void Design_SixteenStages_IsTheMost() =>
        Assert.Equal(16, StarterDesigner.Design(Input with { SwitchingAmps = 156 * Math.Pow(0.18 * 156 / 218, 1 / 15.9) }).StageCount);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(17)]
    public void Design_GivenCountOutOfRange_IsAnError(int count) =>
        AssertError(Input with { SwitchingAmps = null, StageCount = count }, DesignQuantity.Stages, $"{count}", "1 to 16");

    [Theory]
    [InlineData(Slack.LastSection)]
    [InlineData(Slack.LowerPeakCurrent)]
    public void Design_CountTooFewForTheCurrents_IsDesignedAndWarnedOf(Slack slack)
    {
        // ln(7.764) / ln(156/95) = 4.132: with three stages some peak must pass 156 A.
        StarterDesign design = StarterDesigner.Design(Input with { StageCount = 3, Slack = slack });

        Assert.Equal(3, design.StageCount);
        Assert.Equal(4.132, design.StageCountExact, 0.001);
        Assert.True(design.WorstPeakAmps > 170, $"{design.WorstPeakAmps}");
        string warning = Assert.Single(design.Warnings, text => text.Contains("above the peak current of 156 A", StringComparison.Ordinal));
        Assert.Contains("3 stages are taken for 4.132", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_GivenCountTooManyForBothCurrents_IsAnError() =>
        AssertError(Input with { StageCount = 6, Slack = Slack.LastSection }, DesignQuantity.Stages, "found 6,", "4.132", "allowed: 5");

    [Fact]
    public void Design_OneCurrentAndNoCount_IsAnError() =>
        AssertError(Input with { SwitchingAmps = null }, DesignQuantity.Stages, "no number of stages", "raise switching current");

    [Theory]
    [InlineData(Slack.LastSection, DesignQuantity.SwitchingCurrent)]
    [InlineData(Slack.LowerPeakCurrent, DesignQuantity.SwitchingCurrent)]
    public void Design_SlackKeepsACurrentThatIsMissing_IsAnError(Slack slack, DesignQuantity quantity) =>
        AssertError(Input with { SwitchingAmps = null, StageCount = 4, Slack = slack }, quantity, "nothing");

    [Fact]
    public void Design_SlackKeepsAPeakThatIsMissing_IsAnError() =>
        AssertError(Input with { PeakAmps = null, StageCount = 4, Slack = Slack.RaiseSwitchingCurrent }, DesignQuantity.PeakCurrent, "nothing");

    [Theory]
    [InlineData(new double[] { 100, 150 }, "2 thresholds", "3")]
    [InlineData(new double[] { 100, 150, 180, 200 }, "4 thresholds", "3")]
    public void Design_WrongNumberOfThresholds_IsAnError(double[] cutoutVolts, string found, string allowed) =>
        AssertError(Sections with { CutoutVolts = cutoutVolts }, DesignQuantity.CutoutVoltages, found, allowed);

    [Theory]
    [InlineData(new double[] { 100, 90, 180 }, "90 V for stage 2", "100 V of stage 1")]
    [InlineData(new double[] { 100, 150, 150 }, "150 V for stage 3", "150 V of stage 2")]
    public void Design_ThresholdsThatDoNotRise_IsAnError(double[] cutoutVolts, string found, string before) =>
        AssertError(Sections with { CutoutVolts = cutoutVolts }, DesignQuantity.CutoutVoltages, found, before);

    [Theory]
    [InlineData(218)]
    [InlineData(230)]
    public void Design_ThresholdAboveTheSupply_IsAnError(double volts) =>
        AssertError(Sections with { CutoutVolts = [100, 150, volts] }, DesignQuantity.CutoutVoltages, $"{volts} V for stage 3", "218 V");

    [Theory]
    [InlineData(220)]
    [InlineData(230)]
    public void Design_BrushDropNotBelowSupply_IsAnError(double drop) =>
        AssertError(Input with { BrushDropVolts = drop }, DesignQuantity.BrushDrop, $"{drop} V", "220 V");

    [Fact]
    public void Design_CountAgainstGivenSections_IsAnError() =>
        AssertError(Sections with { StageCount = 4 }, DesignQuantity.Stages, "found 4", "3, the number of sections");

    [Fact]
    public void Design_SeventeenGivenSections_IsAnError() =>
        AssertError(Sections with { SectionOhms = [.. Enumerable.Repeat(0.1, 17)] }, DesignQuantity.Sections, "17 sections", "1 to 16");

    [Fact]
    public void Design_GivenSectionsWithoutAnyLimit_IsAnError() =>
        AssertError(Sections with { PeakAmps = null, SwitchingAmps = null }, DesignQuantity.PeakCurrent, "no current and no threshold");

    [Fact]
    public void Design_GivenSectionsThatPassLessThanTheSwitchingCurrent_IsAnError() =>
        // 218 V / 2.5 ohm = 87.2 A; 218 V / 95 A = 2.295 ohm.
        AssertError(Sections with { PeakAmps = null, SwitchingAmps = 95, SectionOhms = [1.8, 0.35, 0.17] }, DesignQuantity.Sections, "2.5 ohm", "87.2 A", "95 A", "2.295 ohm");

    [Fact]
    public void Design_GivenSectionThatThePeakDoesNotNeed_IsAnError() =>
        // Without the first section 1.5 ohm pass 218 V / 1.5 ohm = 145.3 A; 218 V / 156 A = 1.397 ohm.
        AssertError(Sections with { SectionOhms = [0.7, 0.82, 0.5] }, DesignQuantity.Sections, "1.5 ohm", "145.3 A", "156 A", "1.397 ohm");

    [Theory]
    [InlineData(0, "0 V")]
    [InlineData(-5, "-5 V")]
    public void Design_HandThresholdNotAboveStandstill_IsAnError(double volts, string found) =>
        AssertError(Sections with { CutoutVolts = [volts, 150, 180] }, DesignQuantity.CutoutVoltages, found + " for stage 1", "above 0 V");

    [Fact]
    public void Design_HandThresholdThatTheLoadNeverReaches_NamesTheStage() =>
        AssertError(Sections with { CutoutVolts = [100, 150, 205], Load = new Load(100, 0, 0) }, DesignQuantity.CutoutVoltages, "in stage 3", "59.17 A");

    private static DesignInput Sections { get; } = Input with { SwitchingAmps = null, SectionOhms = [0.7, 0.35, 0.17] };

    private static DesignException AssertError(DesignInput input, DesignQuantity quantity, params string[] parts)
    {
        DesignException error = Assert.Throws<DesignException>(() => StarterDesigner.Design(input));

        Assert.Equal(quantity, error.Quantity);
        Assert.All(parts, part => Assert.Contains(part, error.Message, StringComparison.Ordinal));
        return error;
    }
}
