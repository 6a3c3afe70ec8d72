using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>The machine does not care how long the control period is: events and peaks inside it are found all the same.</summary>
public sealed class LongPeriodTests
{
    [Fact]
    public void Run_UnloadedShaftThatReversesAndSwings_LosesNoEnergy()
    {
        // Without a load the speed's zero is no event; the swinging current's is.
        RunResult run = Run("40 mH", "0.05 kg m2", "-400 rpm", "0 N m", "0.1 ms");

        Assert.Equal(0, Imbalance(run), 1e-9);
    }

    [Theory]
    [InlineData("10 ms")]
    [InlineData("100 ms")]
    public void Run_FirstPeakBeforeAnEventOfTheSamePeriod_IsSeen(string period)
    {
        // 280.8 V across 1.453 ohm: 193 A without inductance. In a long period the shaft also passes standstill.
        RunResult fine = Run("0.5 mH", "0.05 kg m2", "-400 rpm", "20 N m", "0.1 ms");
        RunResult coarse = Run("0.5 mH", "0.05 kg m2", "-400 rpm", "20 N m", period);

        Assert.Equal(185.35, fine.PeakAmps, 0.01);
        Assert.Equal(fine.PeakAmps, coarse.PeakAmps, 0.01);
        Assert.Equal(0, Imbalance(coarse), 1e-9);
    }

    [Fact]
    public void Run_ShaftThatStallsAndGoesOnWithinAPeriod_IsHeldAllTheSame()
    {
        RunResult fine = Run("60 mH", "0.3 kg m2", "30 rpm", "100 N m", "1 ms");
        RunResult coarse = Run("60 mH", "0.3 kg m2", "30 rpm", "100 N m", "100 ms");

        Assert.Equal(fine.PeakAmps, coarse.PeakAmps, 0.001);
    }

    [Fact]
    public void Run_SmallFastMotorAtALongPeriod_GivesAResult()
    {
        RunResult run = CaseRunner.Run(
            CaseFile.Parse("small.toml", """
                [supply]
                voltage = "12 V"
                [motor]
                armature-resistance = "0.5 ohm"
                armature-inductance = "0.01 mH"
                inertia = "5e-10 kg m2"
                constant = "0.005 V s/rad"
                [starter]
                peak-current = "6 A"
                stages = 2
                [control]
                period = "100 ms"
                [run]
                duration = "2 s"
                """),
            null,
            TestContext.Current.CancellationToken).Result;

        Assert.Equal(12 / 0.005 * 30 / Math.PI, run.FinalRpm, 1);
        Assert.Equal(0, Imbalance(run), 1e-9);
    }

    private static RunResult Run(string inductance, string inertia, string speed, string torque, string period) =>
        CaseRunner.Run(
            CaseFile.Parse("case.toml", $"""
                [supply]
                voltage = "220 V"
                [motor]
                armature-resistance = "0.5 ohm"
                armature-inductance = "{inductance}"
                brush-drop = "2 V"
                constant = "1.5 V s/rad"
                inertia = "{inertia}"
                [load]
                speed = "{speed}"
                constant-torque = "{torque}"
                [starter]
                peak-current = "150 A"
                stages = 3
                [control]
                period = "{period}"
                instant-trip = "1000 A"
                minimum-dwell = "1 s"
                [sensors]
                standstill-speed = "500 rpm"    # or a start would be refused while the shaft turns backwards
                [run]
                duration = "3 s"
                record-period = "100 ms"
                """),
            null,
            TestContext.Current.CancellationToken).Result;

    private static double Imbalance(RunResult run) =>
        (run.SupplyJoules - run.SectionJoules.Sum() - run.ArmatureJoules - run.LoadJoules - run.KineticJoules - run.MagneticJoules - run.ArcJoules)
        / Math.Abs(run.SupplyJoules);
}
