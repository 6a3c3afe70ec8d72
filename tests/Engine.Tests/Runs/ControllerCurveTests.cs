using System;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>
/// The flux that the controller goes by against the machine's own, through the controller's own model and its single precision.
/// </summary>
public sealed class ControllerCurveTests
{
    // Straight pieces through at most 12 points of a bent curve: the largest error as a part of the rated constant, 0.61 % as measured.
    private const double Straight = 0.007;

    public static TheoryData<string> Names => MachineCases.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void From_EveryKind_PassesTheControllersCheckAndHoldsTheRatedConstant(string kind)
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Text(kind));
        PreparedRun blind = MachineCases.Prepare(Unmeasured(kind));

        Assert.Equal((SettingId.None, SettingId.None), (run.Settings.FirstProblem(), blind.Settings.FirstProblem()));
        Assert.Equal((float)run.Setup.Machine.Constant, run.Settings.MachineConstant);
        Assert.Equal((float)run.Setup.Machine.Constant, blind.Settings.MachineConstant);
    }

    [Theory]
    [InlineData("separately excited", FluxSource.FieldCurrent, 0)]
    [InlineData("shunt", FluxSource.FieldCurrent, 0.002)]
    [InlineData("long shunt", FluxSource.FieldCurrent, -0.005)]
    [InlineData("short shunt", FluxSource.FieldCurrent, -0.005 / 1.006)]
    [InlineData("differential", FluxSource.FieldCurrent, 0.002)]
    [InlineData("series", FluxSource.ArmatureCurrent, 0)]
    [InlineData("permanent magnet", FluxSource.Constant, 0)]
    public void From_MeasuredCurrents_SaysWhatTheFluxFollows(string kind, FluxSource source, double reactionRatio)
    {
        Settings settings = MachineCases.Prepare(MachineCases.Text(kind)).Settings;

        Assert.Equal(source, settings.FluxSource);
        Assert.Equal(reactionRatio, settings.ReactionRatio, 1e-8);
    }

    [Theory]
    [InlineData("separately excited", FluxSource.Constant)]
    [InlineData("shunt", FluxSource.ArmatureCurrent)]
    [InlineData("long shunt", FluxSource.ArmatureCurrent)]
    [InlineData("short shunt", FluxSource.ArmatureCurrent)]
    [InlineData("differential", FluxSource.ArmatureCurrent)]
    public void From_UnmeasuredFieldCurrent_GoesByTheArmatureCurrent(string kind, FluxSource source) =>
        Assert.Equal(source, MachineCases.Prepare(Unmeasured(kind)).Settings.FluxSource);

    [Theory]
    [InlineData("separately excited")]
    [InlineData("shunt")]
    [InlineData("long shunt")]
    [InlineData("short shunt")]
    [InlineData("differential")]
    public void Now_MeasuredField_IsTheMachinesFluxOverBothCurrents(string kind)
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Text(kind));
        FluxLaw law = run.Setup.Machine.Flux!;
        double largest = 0;
        for (int i = 0; i <= 100; i++)
        {
            double fieldAmps = i * 0.01 * law.Curve.LastAmps / law.FieldShare;
            for (double amps = 0; amps <= run.Settings.InstantTripAmps; amps += 1)
            {
                // Fields that the armature turns round are beyond the controller's model and beyond any start.
                if (law.ExcitingAmps(fieldAmps, amps) >= 0) largest = Math.Max(largest, Error(run, fieldAmps, amps));
            }
        }

        Assert.InRange(largest, 0, Straight);
    }

    [Theory]
    [InlineData("series")]
    [InlineData("long shunt")]
    [InlineData("short shunt")]
    public void Now_ArmatureCurrentAlone_IsTheMachinesFluxAtTheRatedField(string kind)
    {
        PreparedRun run = MachineCases.Prepare(Unmeasured(kind));
        double largest = 0;
        for (double amps = 0; amps <= 1.5 * run.Settings.InstantTripAmps; amps += 0.5)
        {
            largest = Math.Max(largest, Error(run, run.Designed.Machine.RatedFieldAmps, amps));
        }

        Assert.InRange(largest, 0, Straight);
    }

    [Theory]
    [InlineData("shunt")]
    [InlineData("differential")]
    public void Now_FluxThatFallsUnmeasured_IsThatOfThePeakAndNeverMoreBelowIt(string kind)
    {
        PreparedRun run = MachineCases.Prepare(Unmeasured(kind));
        CaseMachine machine = run.Designed.Machine;
        double atPeak = machine.Flux!.ConstantAt(machine.RatedFieldAmps, run.Settings.PeakAmps);

        for (double amps = 0; amps <= run.Settings.PeakAmps; amps += 1)
        {
            float known = Known(run.Settings, 0, amps);
            Assert.Equal(atPeak, known, 1e-6 * atPeak);
            Assert.True(known <= machine.Flux.ConstantAt(machine.RatedFieldAmps, amps) + 1e-6);
        }
    }

    [Fact]
    public void Of_GivenPoints_AreKeptAndMiddlesFillTheTwelve()
    {
        CaseMachine machine = MachineCases.Machine(MachineCases.SeparatelyExcited);

        FluxSetup flux = ControllerCurve.Of(machine, true, 80, 200)!;

        Assert.Equal(Settings.MostCurvePoints, flux.Amps.Count);
        Assert.Empty(System.Linq.Enumerable.Except(machine.Flux!.Curve.Amps, flux.Amps));
    }

    [Fact]
    public void Of_StraightLine_StaysTwoPoints()
    {
        string text = MachineCases.Without(MachineCases.SeparatelyExcited, "curve-currents", "curve-emfs", "curve-speed");

        Assert.Equal([0, 1.1], ControllerCurve.Of(MachineCases.Machine(text), true, 80, 200)!.Amps, (left, right) => Math.Abs(left - right) < 1e-12);
    }

    [Fact]
    public void Of_SeriesWithReaction_StretchesTheCurvesAxis()
    {
        CaseMachine machine = MachineCases.Machine(MachineCases.With(MachineCases.Series, "field", "armature-reaction = 0.05"));

        FluxSetup flux = ControllerCurve.Of(machine, true, 128, 300)!;

        Assert.Equal(160 / 0.95, flux.Amps[^1], 1e-9);
        Assert.Equal(machine.Flux!.ConstantAt(0, 100), new Magnetisation(flux.Amps, flux.Constants).ConstantAt(100), 0.004);
    }

    [Fact]
    public void From_Series_BelievesTheSpeedOfAnUnloadedMachine()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Series);

        // 6 V at 750 rpm: the iron's own flux, on which 220 V would turn it.
        Assert.Equal(2 * 220 / (6 / (25 * Math.PI)), run.Settings.HighestSpeedRadPerSec, 1);
    }

    private static string Unmeasured(string kind) =>
        kind is "series" or "permanent magnet" ? MachineCases.Text(kind) : MachineCases.With(MachineCases.Text(kind), "sensors", "field-current = \"no\"");

    private static double Error(PreparedRun run, double fieldAmps, double armatureAmps) =>
        Math.Abs(Known(run.Settings, fieldAmps, armatureAmps) - run.Setup.Machine.Flux!.ConstantAt(fieldAmps, armatureAmps)) / run.Setup.Machine.Constant;

    private static float Known(Settings settings, double fieldAmps, double armatureAmps) =>
        new FluxModel(settings).Now(new Readings { FieldAmps = (float)fieldAmps, ArmatureAmps = (float)armatureAmps });
}
