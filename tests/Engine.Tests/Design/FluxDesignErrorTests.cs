using System;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>
/// Starters that cannot be, or are unusual, where the flux follows the current: each names the quantity, what was found and
/// what would mend it, with numbers. All derived here.
/// </summary>
public sealed class FluxDesignErrorTests
{
    private static readonly DesignInput Series = FluxMachines.SeriesInput;

    // x = 2 - 0.01 I on the straight curve: k = 1.65 - 0.008 I. k(150 A) = 0.45, k(80 A) = 1.01: q = 0.2376; R1 = 218 / 150 =
    // 1.4533 ohm, first section R1 (0.4455 - 0.2376) = 0.3021 ohm, all of them 0.3021 / 0.7624 = 0.3963 ohm: 1.057 ohm stay.
    [Fact]
    public void Design_FluxFallsFasterThanTheSectionsHelp_NamesWhereTheyEnd() =>
        AssertError(
            Shunt(FluxMachines.Straight, 0.01) with { PeakAmps = 150, SwitchingAmps = 80 },
            DesignQuantity.SwitchingCurrent, "80 A", "1.057 ohm", "0.18 ohm", "1.01 V s/rad", "0.45 V s/rad", "a lower peak current");

    // With a knee the flux holds at first: a low switching current still finds the machine faster than at the peak.
    [Fact]
    public void Design_SwitchingCurrentTooHighForTheFlux_NamesTheOneThatMendsIt()
    {
        DesignInput shunt = Shunt(FluxMachines.Knee, 0.005) with { PeakAmps = 156, SwitchingAmps = 110 };
        DesignException error = AssertError(shunt, DesignQuantity.SwitchingCurrent, "110 A", "156 A", "a switching current below ");

        double mended = double.Parse(error.Allowed.Split("below ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.InRange(mended, 1, 110);
        FluxGrading grading = new(Characteristic.Of(shunt.Flux!, 218, 0.18));
        Assert.True(double.IsFinite(grading.ExactCount(156, 0.99 * mended)));
        Assert.False(double.IsFinite(grading.ExactCount(156, 1.01 * mended)));
    }

    [Fact]
    public void Design_GivenCountWithoutAnExactOne_IsDesignedWithTheCurrentThatItAllows()
    {
        StarterDesign design = StarterDesigner.Design(
            Shunt(FluxMachines.Knee, 0.005) with { PeakAmps = 156, SwitchingAmps = 110, StageCount = 3, Slack = Slack.RaiseSwitchingCurrent });

        Assert.True(design.SwitchingAmps < 110);
        Assert.Equal(3, design.StageCountExact);
    }

    [Fact]
    public void Design_OneStageThatTheFluxDoesNotAllow_AsksForMore() =>
        AssertError(
            Shunt(FluxMachines.Straight, 0.005) with { SwitchingAmps = null, StageCount = 1 },
            DesignQuantity.Stages, "found 1,", "156 A", "1.026 V s/rad", "1.65 V s/rad", "more stages");

    // 2 A of the field less 0.0135 of 156 A leave nothing: k = 0.05 - 0.8 x 0.106 < 0.
    [Fact]
    public void Design_NoFluxAtThePeak_IsAnError() =>
        AssertError(Shunt(FluxMachines.Straight, 0.0135) with { RatedAmps = null }, DesignQuantity.PeakCurrent, "156 A", "no flux is left", "-0.0348 V s/rad");

    // 1.3 V s/rad x 156 A = 202.8 N m; beyond 156 A the curve rises to 1.38 at 220 A: 210 N m need about 160.8 A.
    [Fact]
    public void Design_LoadHoldsAgainstThePeak_NamesTorquesAndTheCurrent()
    {
        DesignException error = AssertError(
            Series with { Load = new Load(210, 0, 0) }, DesignQuantity.PeakCurrent, "156 A, which gives 202.8 N m", "210 N m", "above ");

        double needed = double.Parse(error.Allowed.Split("above ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(210, needed * FluxMachines.Series.ConstantAt(needed), 0.1);
    }

    // 1.65 I - 0.008 I^2 is at most 85.1 N m, at 103 A.
    [Fact]
    public void Design_LoadThatTheFallingFluxNeverCarries_PromisesNoCurrent()
    {
        DesignException error = AssertError(
            Shunt(FluxMachines.Straight, 0.01) with { Load = new Load(90, 0, 0) }, DesignQuantity.PeakCurrent, "62.71 N m", "90 N m");

        Assert.DoesNotContain("above", error.Allowed, StringComparison.Ordinal);
        Assert.Contains("a lighter load", error.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_SwitchingBelowTheLoad_NamesTheStageAndBothCurrents()
    {
        // 100 N m stop the series motor at I k(I) = 100, above 90 A.
        DesignException error = AssertError(
            Series with { SwitchingAmps = 80, Load = new Load(100, 0, 0) }, DesignQuantity.SwitchingCurrent, "80 A in stage 1", "would never end");

        double load = double.Parse(error.Found.Split("the load takes ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(100, load * FluxMachines.Series.ConstantAt(load), 0.1);
        Assert.Contains($"above {Text.Number(load)} A", error.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_LoadAboveEveryTorqueOfAFallingFlux_SaysThatNoCurrentIsEnough() =>
        // 1.2 ohm at 60 A: (218 - 72) / 1.17 = 124.8 rad/s, where the fan takes 155.7 N m; no current gives over 85.1.
        AssertError(OneSection with { Load = new Load(0, 0, 0.01) }, DesignQuantity.SwitchingCurrent, "60 A in stage 1", "more than the machine gives with any current");

    // At standstill 218 / 1.4 = 155.7 A at k = 0.404 give 62.95 N m; at the cutout 60 A would give 70.2 N m.
    [Theory]
    [InlineData(62, true)]
    [InlineData(66, false)]
    public void Design_TorqueShortBeforeTheCutout_NamesTheStage(double loadTorque, bool starts)
    {
        DesignInput input = OneSection with { Load = new Load(loadTorque, 0, 0) };
        if (starts) Assert.True(StarterDesigner.Design(input).Stages[0].ExpectedSeconds > 0);
        else AssertError(input, DesignQuantity.Sections, "62.95 N m from 155.7 A in stage 1 at 0 r/min", "66 N m", "would never end");
    }

    // Cut out at 90 A from 1.4533 ohm at 93.8 rad/s, 0.9 ohm would let the current rise until the flux is gone.
    [Fact]
    public void Design_CurrentThatRunsAwayBehindACutout_IsAnError() =>
        AssertError(
            Shunt(FluxMachines.Straight, 0.01) with { ArmatureOhms = 0.9, PeakAmps = null, SwitchingAmps = 90, SectionOhms = [218.0 / 150 - 0.9] },
            DesignQuantity.PeakCurrent, "stage 1", "90 A", "no flux is left");

    // 91.5 A at 1.29 ohm and 100 V; 155 A at 0.73 ohm and 105 V: more flux, so a lower speed.
    [Fact]
    public void Design_ThresholdsThatRiseWhileTheSpeedFalls_AreAnError() =>
        AssertError(
            Series with { SwitchingAmps = null, SectionOhms = [0.56, 0.33, 0.22], CutoutVolts = [100, 105, 190] },
            DesignQuantity.CutoutVoltages, "stage 2", "would be cut out at once", "speeds rise");

    // 34 V over 0.35 ohm are 51 A: a weak field and a speed at which 156 A would ask for more than the supply.
    [Fact]
    public void Design_ThresholdThatThePeaksFluxCannotReach_IsAnError() =>
        AssertError(
            Series with { SwitchingAmps = null, SectionOhms = [0.7, 0.35, 0.17], CutoutVolts = [90, 155, 200] },
            DesignQuantity.CutoutVoltages, "200 V for stage 3", "156 A", "218 V");

    [Theory]
    [InlineData(new double[] { 100, 150 }, "2 thresholds")]
    [InlineData(new double[] { 100, 90, 180 }, "90 V for stage 2")]
    [InlineData(new double[] { 100, 150, 218 }, "218 V for stage 3")]
    [InlineData(new double[] { 0, 150, 180 }, "0 V for stage 1")]
    public void Design_ThresholdsThatNoStarterHas_AreTheErrorsOfConstantFlux(double[] cutoutVolts, string found) =>
        AssertError(Series with { SwitchingAmps = null, SectionOhms = [0.7, 0.35, 0.17], CutoutVolts = cutoutVolts }, DesignQuantity.CutoutVoltages, found);

    [Fact]
    public void Design_SectionsCutOutAtStandstill_AreTheErrorsOfConstantFlux()
    {
        AssertError(Series with { PeakAmps = null, SectionOhms = [1.8, 0.35, 0.17] }, DesignQuantity.Sections, "2.5 ohm", "87.2 A", "95 A");
        AssertError(Series with { SwitchingAmps = null, SectionOhms = [0.7, 0.82, 0.5] }, DesignQuantity.Sections, "1.5 ohm", "145.3 A", "156 A");
    }

    [Fact]
    public void Design_LimitsVeryClose_NeedsMoreStagesThanThereAre() =>
        AssertError(Series with { SwitchingAmps = 153 }, DesignQuantity.SwitchingCurrent, " stages are needed", "16 stages");

    [Fact]
    public void Design_TooManyStagesForBothCurrents_IsAnError() =>
        AssertError(Series with { StageCount = 6, Slack = Slack.LastSection }, DesignQuantity.Stages, "found 6,");

    [Theory]
    [InlineData(220, 0)]
    [InlineData(150, 1)]
    public void Design_ExcitingCurrentBeyondTheCurve_WarnsWithBothNumbers(double lastAmps, int warnings)
    {
        ArmatureFlux flux = FluxMachines.Series with { Law = FluxMachines.Series.Law with { Curve = new Magnetisation([0, 60, lastAmps], [0.06, 0.9, 1.3]) } };
        string[] found = [.. StarterDesigner.Design(Series with { Flux = flux }).Warnings.Where(text => text.Contains("magnetisation curve ends", StringComparison.Ordinal))];

        Assert.Equal(warnings, found.Length);
        Assert.All(found, text => Assert.Contains("the exciting current is 156 A, but the magnetisation curve ends at 150 A", text, StringComparison.Ordinal));
    }

    // x = 2 - 0.0005 I: k(156 A) = 1.5876 and k(95 A) = 1.612 V s/rad.
    [Theory]
    [InlineData(-0.0005, 1)]
    [InlineData(0.0005, 0)]
    public void Design_DifferentialCompound_WarnsWithBothConstants(double share, int warnings)
    {
        ArmatureFlux flux = new(new FluxLaw(new Magnetisation([0, 2, 3], [0.05, 1.65, 2.45])) { ArmatureShare = share }, 2);
        string[] found = [.. StarterDesigner.Design(Series with { Flux = flux }).Warnings.Where(text => text.Contains("works against the field", StringComparison.Ordinal))];

        Assert.Equal(warnings, found.Length);
        Assert.All(found, text => Assert.Contains("1.588 V s/rad", text, StringComparison.Ordinal));
        Assert.All(found, text => Assert.Contains("1.612 V s/rad", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Design_ArmatureReaction_IsNoDifferentialCompound() =>
        Assert.DoesNotContain(StarterDesigner.Design(Shunt(FluxMachines.Straight, 0.0003)).Warnings, text => text.Contains("works against", StringComparison.Ordinal));

    // w0 = 218 / 1.65 = 132.1 rad/s. A brake of 0.52 + 0.18 ohm: (1.65 - 0.0004 I) w0 - 2 = 0.7 I gives 216 / 0.75285 = 286.9 A.
    // 156 A need 111.2 V, which the controller sees without current: 111.2 / 1.65 x 30 / pi = 643.6 r/min.
    [Fact]
    public void Design_BrakeOfAShuntMachine_WarnsOfTheCurrentThatItsFluxGives()
    {
        StarterDesign design = StarterDesigner.Design(Shunt(FluxMachines.Straight, 0.0005) with { BrakeOhms = 0.52 });

        string warning = Assert.Single(design.Warnings, text => text.Contains("brake", StringComparison.Ordinal));
        Assert.Contains("286.9 A", warning, StringComparison.Ordinal);
        Assert.Contains("111.2 V and 643.6 r/min", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_BrakeOfASeriesMachine_HasNoFullSpeedToWarnOf() =>
        Assert.DoesNotContain(StarterDesigner.Design(Series with { BrakeOhms = 0.5 }).Warnings, text => text.Contains("brake", StringComparison.Ordinal));

    [Fact]
    public void Design_LoadCloseToTheSwitchingCurrent_Warns() =>
        Assert.Contains(
            StarterDesigner.Design(Series with { SwitchingAmps = null, StageCount = 2, Load = new Load(92, 0, 0) }).Warnings,
            text => text.Contains("may stick", StringComparison.Ordinal));

    private static DesignInput OneSection { get; } = Shunt(FluxMachines.Straight, 0.01) with
    {
        ArmatureOhms = 1.2,
        RatedAmps = null,
        PeakAmps = null,
        SwitchingAmps = 60,
        SectionOhms = [0.2],
    };

    private static DesignInput Shunt(Magnetisation curve, double reactionRatio) =>
        Series with { Flux = new ArmatureFlux(new FluxLaw(curve) { ReactionRatio = reactionRatio }, 2) };

    private static DesignException AssertError(DesignInput input, DesignQuantity quantity, params string[] parts)
    {
        DesignException error = Assert.Throws<DesignException>(() => StarterDesigner.Design(input));

        Assert.All(parts, part => Assert.Contains(part, error.Message, StringComparison.Ordinal));
        Assert.Equal(quantity, error.Quantity);
        return error;
    }
}
