using System;
using CsCheck;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>The flux-ratio recursion. What carries no trait is derived here from the two voltage equations of a cutout.</summary>
public sealed class FluxGradingTests
{
    // CHK-04: the geometric starter is what remains when the curve is flat.
    [Theory]
    [Trait("Source", "CHK-04")]
    [InlineData(Slack.LastSection)]
    [InlineData(Slack.RaiseSwitchingCurrent)]
    [InlineData(Slack.LowerPeakCurrent)]
    public void Design_FlatCurve_IsTheGeometricStarter(Slack slack) =>
        FluxMachines.AnyRising.Sample(random =>
        {
            double k = random.Flux!.ConstantAt(random.PeakAmps!.Value);
            DesignInput constant = random with { Flux = null, MachineConstant = k, Slack = slack, Load = new Load(0.2 * k * random.SwitchingAmps!.Value, 0, 0) };
            if (StageGrading.ExactCount(constant.SupplyVolts - constant.BrushDropVolts, constant.ArmatureOhms, constant.PeakAmps!.Value, constant.SwitchingAmps!.Value) > 16) return;

            StarterDesign geometric = StarterDesigner.Design(constant), byCurve = StarterDesigner.Design(FluxMachines.Flat(constant, k));

            Assert.Equal(geometric.StageCount, byCurve.StageCount);
            AssertSame(geometric.StageCountExact, byCurve.StageCountExact);
            AssertSame(geometric.PeakAmps, byCurve.PeakAmps);
            AssertSame(geometric.SwitchingAmps, byCurve.SwitchingAmps);
            AssertSame(geometric.FinalPeakAmps, byCurve.FinalPeakAmps);
            for (int i = 0; i < geometric.StageCount; i++)
            {
                DesignedStage one = geometric.Stages[i], other = byCurve.Stages[i];
                AssertSame(one.TotalOhms, other.TotalOhms);
                AssertSame(one.CutoutVolts, other.CutoutVolts);
                AssertSame(one.CutoutRpm!.Value, other.CutoutRpm!.Value);
                AssertSame(one.PeakAmps, other.PeakAmps);
                AssertSame(one.SwitchingAmps, other.SwitchingAmps);
                AssertSame(one.VoltsLeft, other.VoltsLeft);
                AssertSame(one.LoadAmps!.Value, other.LoadAmps!.Value);
                // The closed form against the quadrature.
                Assert.Equal(1, other.ExpectedSeconds!.Value / one.ExpectedSeconds!.Value, 1e-9);
                Assert.Equal(1, other.EnergyJoules!.Value / one.EnergyJoules!.Value, 1e-9);
            }
        });

    // k(156 A) = 1.3, k(60 A) = 0.9, R1 = 218 / 156 = 1.39744 ohm. (218 - 60 x 1.39744) / 0.9 = 149.06 rad/s; behind the cutout
    // 218 - 1.3 x 149.06 = 24.22 V are left for 156 A: 0.15527 ohm.
    [Fact]
    public void NextTotal_SeriesMotor_KeepsTheSpeed()
    {
        FluxGrading grading = Of(FluxMachines.SeriesInput);

        Assert.Equal(0.15527, grading.NextTotal(218.0 / 156, 156, 60), 0.00001);
    }

    // q = (1.3 / 0.9) (60 / 156) = 0.5556; the first section is 1.39744 - 0.15527 = 1.24217 ohm.
    // At Ra = 0.15527 ohm one section is enough, at 1.39744 none is needed; to 0.5 ohm it is ln(1 - 0.4444 x 0.72248) / ln(0.5556) = 0.6589.
    [Theory]
    [InlineData(0.15527, 1.0)]
    [InlineData(0.5, 0.6589)]
    [InlineData(1.39743, 0.0)]
    public void ExactCount_SeriesMotor_IsThePowerOfTheSectionsRatio(double armatureOhms, double count) =>
        Assert.Equal(count, Of(FluxMachines.SeriesInput with { ArmatureOhms = armatureOhms }).ExactCount(156, 60), 0.0001);

    [Fact]
    public void ExactCount_WhereTheRecursionLandsOnTheArmature_IsAWholeNumber() =>
        Gen.Select(Gen.OneOf(FluxMachines.AnyRising, FluxMachines.AnyFalling), Gen.Int[1, 8]).Sample((input, count) =>
        {
            FluxGrading grading = Of(input);
            double total = (input.SupplyVolts - input.BrushDropVolts) / input.PeakAmps!.Value;
            for (int i = 0; i < count; i++) total = grading.NextTotal(total, input.PeakAmps.Value, input.SwitchingAmps!.Value);
            if (total <= 0) return;

            Assert.Equal(count, Of(input with { ArmatureOhms = total }).ExactCount(input.PeakAmps.Value, input.SwitchingAmps!.Value), 1e-6);
        });

    [Fact]
    public void Totals_AnySections_AreAGeometricSeries() =>
        Gen.OneOf(FluxMachines.AnyRising, FluxMachines.AnyFalling).Sample(input =>
        {
            double i1 = input.PeakAmps!.Value, i2 = input.SwitchingAmps!.Value;
            double ratio = input.Flux!.ConstantAt(i1) / input.Flux.ConstantAt(i2) * i2 / i1;

            double[] totals = Of(input).Totals(i1, i2, 5);

            for (int i = 2; i < 5; i++) Assert.Equal(ratio, (totals[i - 1] - totals[i]) / (totals[i - 2] - totals[i - 1]), 1e-7);
        });

    [Fact]
    public void RaisedSwitchingAmps_AnyCount_LandsOnTheArmature() =>
        Gen.Select(FluxMachines.AnyRising, Gen.Int[1, 8]).Sample((input, count) =>
        {
            double raised = Of(input).RaisedSwitchingAmps(input.PeakAmps!.Value, count)!.Value;

            Assert.InRange(raised, 0, input.PeakAmps.Value);
            AssertLands(input, input.PeakAmps.Value, raised, count);
        });

    [Fact]
    public void LoweredPeakAmps_AnyCount_LandsOnTheArmature() =>
        Gen.Select(Gen.OneOf(FluxMachines.AnyRising, FluxMachines.AnyFalling), Gen.Int[1, 8]).Sample((input, count) =>
        {
            double? lowered = Of(input).LoweredPeakAmps(input.SwitchingAmps!.Value, count);

            // Only where the flux is gone before the motor's own current at standstill there may be none.
            double directAmps = (input.SupplyVolts - input.BrushDropVolts) / input.ArmatureOhms;
            Assert.Equal(lowered == null, lowered == null && input.Flux!.ConstantAt(directAmps) <= 0);
            if (lowered is not double peakAmps) return;
            Assert.InRange(peakAmps, input.SwitchingAmps.Value, directAmps);
            AssertLands(input, peakAmps, input.SwitchingAmps.Value, count);
        });

    private static void AssertLands(DesignInput input, double peakAmps, double switchingAmps, int count)
    {
        FluxGrading grading = Of(input);
        double[] totals = grading.Totals(peakAmps, switchingAmps, count);
        double landed = grading.NextTotal(totals[^2], peakAmps, switchingAmps);
        // Both currents enter the total with the supply's volts over them.
        Assert.Equal(input.ArmatureOhms, landed, 1e-10 * totals[0]);
        for (int i = 1; i <= count; i++) Assert.True(totals[i] < totals[i - 1]);
    }

    private static FluxGrading Of(DesignInput input) =>
        new(input.CharacteristicOn(input.ArmatureOhms));

    private static void AssertSame(double expected, double actual) => Assert.Equal(0, actual - expected, 1e-11 * Math.Max(1, Math.Abs(expected)));
}
