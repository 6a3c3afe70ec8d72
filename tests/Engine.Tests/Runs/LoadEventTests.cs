using System;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Loads that change on the way: ramps of torque and supply, a hoist's torque and the load's inertia.</summary>
public sealed class LoadEventTests
{
    private const double Inertia = 2.5;

    // Coasting with the line open: the load alone slows the shaft, w = w0 - (T t + (T1 - T) t^2 / 2 over) / J.
    [Theory]
    [InlineData(0.1, 1.0)]
    [InlineData(0.1003, 0.7777)]
    [InlineData(0.1, 0.0004)]
    public void LoadTorque_OverATime_SlowsACoastingShaftAsTheStraightLineSays(double at, double over)
    {
        PlayedRun run = Coast(100, At(at) with { LoadTorqueNewtonMetres = 120, OverSeconds = over });

        double beforeEnd = at + over / 2;
        Assert.Equal(100 - (70 * at + 70 * over + 50 * over / 2) / Inertia - 120 * (1.9 - at - over) / Inertia, run.At(1.9).SpeedRadPerSec, 2e-5);
        Assert.InRange(run.Samples.First(sample => sample.TimeSeconds >= beforeEnd).LoadTorqueNewtonMetres, 95 - 25 * 0.002 / over, 95 + 25 * 0.002 / over);
        Assert.Equal(120, run.At(1.9).LoadTorqueNewtonMetres);
        AssertBalanced(run.Result, 1e-9);
    }

    [Fact]
    public void LoadTorque_SecondRampInTheMiddleOfTheFirst_GoesOnFromThere()
    {
        PlayedRun run = Coast(100, At(0.1) with { LoadTorqueNewtonMetres = 120, OverSeconds = 1 }, At(0.6) with { LoadTorqueNewtonMetres = 70, OverSeconds = 0.5 });

        // Up to 95 N m in 0.5 s and down again.
        Assert.Equal(100 - (70 * 1.5 + 25 * 0.5) / Inertia, run.At(1.5).SpeedRadPerSec, 1e-5);
        Assert.Equal(70, run.At(1.5).LoadTorqueNewtonMetres);
    }

    [Fact]
    public void SupplyVolts_OverATime_IsReadAsAStraightLine()
    {
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(At(2) with { SupplyVolts = 180, OverSeconds = 0.5 }));

        // Between two ticks the voltage in the middle of them holds.
        Assert.Equal(200, run.At(2.25).SupplyVolts, 0.041);
        Assert.Equal(180, run.At(2.6).SupplyVolts);
        AssertBalanced(run.Result, 1e-9);
    }

    [Fact]
    public void HoistTorque_AtOnceAndOverATime_PullsACoastingShaftBackwards()
    {
        RunSetup setup = Coasting(20, At(0.5) with { HoistNewtonMetres = 100 }, At(1) with { HoistNewtonMetres = 0, OverSeconds = 0.4 }) with { Load = Load.None };
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, setup);

        Assert.Equal(20, run.At(0.5).SpeedRadPerSec);
        Assert.Equal(0, run.At(1).SpeedRadPerSec, 1e-5);
        Assert.Equal(-100 * 0.2 / Inertia, run.At(2).SpeedRadPerSec, 1e-5);
        AssertBalanced(run.Result, 1e-9);
    }

    [Fact]
    public void ShaftLocked_UnderAHoistsLoad_Holds()
    {
        RunSetup setup = Coasting(0, At(0.5) with { ShaftLocked = true }) with { Load = Load.None with { HoistNewtonMetres = 500 }, Supply = new Supply(1e-3, 0) };
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, setup);

        Assert.Equal(-100, run.At(0.5).SpeedRadPerSec, 1e-4);
        Assert.All(run.Between(0.5 + ShaftJam.StopSeconds, 4), sample => Assert.Equal(0, sample.SpeedRadPerSec));
    }

    [Fact]
    public void LoadInertia_Changed_LeavesTheSpeedAndChangesWhatFollows()
    {
        RunSetup setup = Coasting(100, At(0.5) with { LoadInertiaKgM2 = 4 }) with { LoadInertiaKgM2 = 1.5 };
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, setup);

        double atChange = 100 - 70 * 0.5 / 2.5;
        Assert.Equal(atChange, run.At(0.5).SpeedRadPerSec, 1e-5);
        Assert.Equal(atChange - 70 * 1.0 / 5, run.At(1.5).SpeedRadPerSec, 1e-5);
        AssertBalanced(run.Result, 1e-9);
        // Friction over the whole way, less the kinetic energy that came with the added inertia.
        double last = run.Samples[^1].SpeedRadPerSec;
        double friction = 70 * ((100 + atChange) / 2 * 0.5 + (atChange + last) / 2 * 3.5);
        Assert.Equal(friction - 0.5 * 2.5 * atChange * atChange, run.Result.LoadJoules, 0.01);
    }

    [Fact]
    public void Run_CaseWithAHoistAndRamps_IsReadAndTold()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            ["at = \"4 s\"\nload-torque = \"60 N m\"\nhoist-torque = \"40 N m\"\nsupply-voltage = \"215 V\"\nover = \"1.5 s\"", "at = \"6 s\"\nload-inertia = \"3 kg m2\""],
            ("load.hoist-torque", "30 N m")));

        Assert.Equal(30, study.Setup.Load.HoistNewtonMetres);
        Assert.Equal(2.2, study.Setup.LoadInertiaKgM2);
        Assert.Equal(
            ["event: the load's constant torque becomes 60 N m over 1.5 s, the supply becomes 215 V over 1.5 s, the hoist's torque becomes 40 N m over 1.5 s", "event: the load's inertia becomes 3 kg m2"],
            study.Result.Timeline.Where(entry => entry.Event != null).Select(ReasonText.Sentence));
        AssertBalanced(study.Result, 1e-6);
    }

    [Fact]
    public void Run_RampOfNoTimeAtAll_IsTheStep()
    {
        PlayedRun step = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(new RunEvent(2.0005, 90, 210, null)));
        PlayedRun ramp = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(new RunEvent(2.0005, 90, 210, null) with { OverSeconds = 1e-7 }));

        Assert.Equal(step.At(3).SpeedRadPerSec, ramp.At(3).SpeedRadPerSec, 1e-4);
    }

    private static RunEvent At(double seconds) => new(seconds, null, null, null);

    // The operator does nothing until the end, so that the line stays open.
    private static RunSetup Coasting(double speed, params RunEvent[] events) =>
        PlayedRun.Setup([.. events, new RunEvent(4, null, null, OperatorCommand.Start)]) with { InitialSpeedRadPerSec = speed };

    private static PlayedRun Coast(double speed, params RunEvent[] events) => PlayedRun.Of(PlayedRun.Patient, Coasting(speed, events));

    private static void AssertBalanced(RunResult run, double tolerance)
    {
        double spent = run.SectionJoules.Sum() + run.ArmatureJoules + run.LoadJoules + run.KineticJoules + run.MagneticJoules + run.ArcJoules;
        double turnover = Math.Abs(run.SupplyJoules) + run.SectionJoules.Sum() + run.ArmatureJoules + Math.Abs(run.LoadJoules) + Math.Abs(run.KineticJoules);
        Assert.Equal(0, (run.SupplyJoules - spent) / turnover, tolerance);
    }
}
