using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Times that a run reports, and the samples that pictures are drawn from.</summary>
public sealed class RunTimesTests
{
    // Whatever turns counts as standing here: no stage is closed before the line, and every start has all its cutouts.
    private static readonly ControlSetup Panel = Rigs.Panel with { Sensors = new SensorSetup { StandstillRadPerSec = 200 } };

    private static readonly Rig Shaft = Rigs.LineShaft with { Control = Panel, Contactors = new Contactors(0.04, 0.015) };

    [Fact]
    public void Run_AnHour_IsUpToSpeedWhenAShortRunIsAndKeepsAShortTrace()
    {
        StartStudy brief = LineShaftCase.Run(LineShaftCase.With(("run.duration", "20 s"), ("run.record-period", "1 ms")));
        StartStudy hour = LineShaftCase.Run(LineShaftCase.With(("run.duration", "3600 s")));

        double level = 0.95 * hour.Result.FinalRpm * Math.PI / 30;
        Assert.Equal(brief.Result.SecondsToSpeed!.Value, hour.Result.SecondsToSpeed!.Value, 1e-3);
        Assert.Equal(brief.Record.Samples.First(sample => sample.SpeedRadPerSec >= level).TimeSeconds, hour.Result.SecondsToSpeed.Value, 1e-3);
        Assert.InRange(hour.Trace.Samples.Count, 1000, 59_999);
        AssertRising(hour.Trace);
        AssertRising(brief.Trace);

        // The trace of the hour has the peak behind every contact as every tick of the short run saw it.
        double[] spans = [0, .. hour.Result.Cutouts.Select(cutout => cutout.Seconds), 20];
        for (int i = 0; i + 1 < spans.Length; i++)
        {
            float Peak(IEnumerable<Sample> samples) =>
                samples.Where(sample => sample.TimeSeconds > spans[i] && sample.TimeSeconds < spans[i + 1]).Max(sample => sample.ArmatureAmps);
            Assert.Equal(Peak(brief.Record.Samples), Peak(hour.Trace.Samples), 1e-3);
        }
    }

    [Fact]
    public void Trace_EventsAndStops_IsInTheOrderOfTime() =>
        AssertRising(LineShaftCase.Run(LineShaftCase.With(
        [
            "at = \"0 s\"\ncommand = \"start\"",
            "at = \"1 s\"\nload-torque = \"50 N m\"",
            "at = \"1 s\"\nsupply-voltage = \"210 V\"",
            "at = \"3.0004 s\"\ncommand = \"stop\"",
            "at = \"4 s\"\ncommand = \"start\"",
        ])).Trace);

    // Nothing of the controller changes with the supply here: the dip alone must make the trace dense again.
    [Fact]
    public void Trace_SupplyDipsLongAfterTheStart_HasThePeakOfTheDip()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            ["at = \"60 s\"\nsupply-voltage = \"190 V\""], ("run.duration", "62 s"), ("run.record-period", "1 ms")));

        float lowest = study.Record.Samples.Min(sample => sample.ArmatureAmps);
        Assert.InRange(lowest, -150, -50);
        Assert.Equal(lowest, study.Trace.Samples.Min(sample => sample.ArmatureAmps));
    }

    // The stop comes between the crossing of the first threshold and the end of the dwell, in stage 1; so does the restart.
    [Fact]
    public void Run_StopInTheDwellAndRestart_TimesTheThresholdOfTheSecondStart()
    {
        Rig rig = Shaft with
        {
            Control = Panel with { MinimumDwellMicroseconds = 2_000_000 },
            DurationSeconds = 10,
            Events =
            [
                new RunEvent(0, null, null, OperatorCommand.Start),
                new RunEvent(1.9, null, null, OperatorCommand.Stop),
                new RunEvent(2.2, null, null, OperatorCommand.Start),
            ],
        };

        RunResult run = rig.Run();

        Assert.Equal(3, run.Cutouts.Count);
        Assert.All(run.Cutouts, cutout => Assert.InRange(cutout.ThresholdSeconds, 2.2, cutout.CommandSeconds));
        Assert.Equal(2.24, run.Cutouts[0].ThresholdSeconds, 0.01);
    }

    [Fact]
    public void Run_RestartOfARunningMachine_TimesItsOwnThresholds()
    {
        Rig rig = Shaft with
        {
            DurationSeconds = 8,
            Events =
            [
                new RunEvent(0, null, null, OperatorCommand.Start),
                new RunEvent(4, null, null, OperatorCommand.Stop),
                new RunEvent(4.5, null, null, OperatorCommand.Start),
            ],
        };

        RunResult run = rig.Run();

        Assert.Equal(6, run.Cutouts.Count);
        Assert.All(run.Cutouts.Skip(3), cutout => Assert.InRange(cutout.ThresholdSeconds, 4.5, cutout.CommandSeconds));
    }

    [Theory]
    [InlineData(45)]
    [InlineData(60)]
    [InlineData(75)]
    [InlineData(90)]
    public void Run_Lockout_NeverTimesAThresholdBehindItsCommand(double lockoutAmps)
    {
        Rig rig = Shaft with { Load = new Load(20, 0.05, 0.001), Control = Panel with { LockoutAmps = lockoutAmps }, DurationSeconds = 12 };

        RunResult run = rig.Run();

        Assert.Equal(3, run.Cutouts.Count);
        double before = 0;
        foreach (Cutout cutout in run.Cutouts)
        {
            Assert.InRange(cutout.ThresholdSeconds, before, cutout.CommandSeconds);
            before = cutout.CommandSeconds;
        }
    }

    // The shaft comes in faster than the supply: the current back is beyond the lockout, while the threshold is passed from
    // the first instant.
    [Fact]
    public void Run_LockoutOnACurrentBack_TimesTheThresholdFromTheArrival()
    {
        Rig rig = Shaft with { InitialSpeedRadPerSec = 282 / 1.69, Control = Panel with { LockoutAmps = 30 }, DurationSeconds = 6 };

        Cutout first = rig.Run().Cutouts[0];

        Assert.InRange(first.ThresholdSeconds, 0.04, 0.05);
        Assert.InRange(first.CommandSeconds, 0.1, 1);
        Assert.InRange(first.AmpsBefore, -30, -20);
    }

    private static void AssertRising(Trace trace)
    {
        for (int i = 1; i < trace.Samples.Count; i++) Assert.True(trace.Samples[i].TimeSeconds > trace.Samples[i - 1].TimeSeconds);
    }
}
