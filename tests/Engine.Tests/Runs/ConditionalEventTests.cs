using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Events that wait for a speed or a stage: when they come, how often, and what is said when they never do.</summary>
public sealed class ConditionalEventTests
{
    private const double Rpm = Math.PI / 30;

    [Fact]
    public void SpeedAbove_Accelerating_ComesOnTheFirstTickBehindTheSpeed()
    {
        PlayedRun run = Play(Waiting(EventConditionKind.SpeedAbove, 600 * Rpm) with { SupplyVolts = 150 });

        TimelineEntry happened = Happened(run);
        double first = run.Samples.First(sample => sample.SpeedRadPerSec > 600 * Rpm).TimeSeconds;
        Assert.Equal(first, happened.Seconds, 1e-12);
        Assert.Equal(first, happened.Event!.AtSeconds, 1e-12);
        Assert.Equal(220, run.At(first).SupplyVolts);
        Assert.Equal(150, run.At(first + 0.001).SupplyVolts);
    }

    [Fact]
    public void After_BetweenTwoTicks_ComesAtThatInstant()
    {
        PlayedRun at = Play(Waiting(EventConditionKind.SpeedAbove, 600 * Rpm) with { SupplyVolts = 150 });
        PlayedRun later = Play(Waiting(EventConditionKind.SpeedAbove, 600 * Rpm, 0.2005) with { SupplyVolts = 150 });

        Assert.Equal(Happened(at).Seconds + 0.2005, Happened(later).Seconds, 1e-12);
    }

    [Fact]
    public void SpeedBelow_StandingAtFirst_WaitsUntilTheShaftHasBeenFaster()
    {
        PlayedRun run = Play(
            new RunEvent(0, null, null, OperatorCommand.Start),
            new RunEvent(1.4, null, null, OperatorCommand.Stop),
            Waiting(EventConditionKind.SpeedBelow, 300 * Rpm) with { ShaftLocked = true });

        TimelineEntry happened = run.Result.Timeline.Single(entry => entry.Event?.When != null);
        Assert.True(happened.Seconds > 1.4);
        Assert.InRange(run.At(happened.Seconds).SpeedRadPerSec, 299 * Rpm, 300 * Rpm);
        Assert.True(run.At(happened.Seconds - 0.001).SpeedRadPerSec >= 300 * Rpm);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void StageReached_InAStart_ComesOnTheTickOnWhichTheStageTakesEffect(int stage)
    {
        PlayedRun run = Play(Waiting(EventConditionKind.StageReached, stage) with { CurrentSensorGain = 1 });

        double first = run.Samples.First(sample => sample.Phase is Phase.Accelerating or Phase.Running && sample.Stage >= stage).TimeSeconds;
        Assert.Equal(first, Happened(run).Seconds, 1e-12);
    }

    [Fact]
    public void Condition_TrueTwice_FiresOnce()
    {
        PlayedRun run = Play(
            new RunEvent(0, null, null, OperatorCommand.Start),
            new RunEvent(1, null, null, OperatorCommand.Stop),
            new RunEvent(2.5, null, null, OperatorCommand.Start),
            Waiting(EventConditionKind.SpeedAbove, 200 * Rpm) with { LoadTorqueNewtonMetres = 71 });

        Assert.Single(run.Result.Timeline, entry => entry.Event?.When != null);
        Assert.Empty(run.Result.EventsLeft);
    }

    [Fact]
    public void Condition_TwoAtOnceAndATimedOne_TimedFirstThenTheirOrder()
    {
        double tick = Happened(Play(Waiting(EventConditionKind.SpeedAbove, 600 * Rpm) with { LoadTorqueNewtonMetres = 71 })).Seconds;
        RunEvent first = Waiting(EventConditionKind.SpeedAbove, 600 * Rpm) with { LoadTorqueNewtonMetres = 72 };
        RunEvent second = Waiting(EventConditionKind.SpeedAbove, 599.9 * Rpm) with { LoadTorqueNewtonMetres = 73 };

        PlayedRun run = Play(first, second, new RunEvent(tick, 71, null, null));

        Assert.Equal([71.0, 72.0, 73.0], run.Result.Timeline.Where(entry => entry.Event != null).Select(entry => entry.Event!.LoadTorqueNewtonMetres!.Value));
    }

    [Fact]
    public void Condition_NeverTrueOrDelayedBeyondTheEnd_IsLeft()
    {
        PlayedRun run = Play(
            Waiting(EventConditionKind.SpeedAbove, 5000 * Rpm) with { SupplyVolts = 150 },
            Waiting(EventConditionKind.SpeedAbove, 600 * Rpm, 100) with { SupplyVolts = 150 });

        Assert.Equal(2, run.Result.EventsLeft.Count);
        Assert.DoesNotContain(run.Result.Timeline, entry => entry.Event != null);
    }

    [Fact]
    public void Run_CaseWithConditions_ShowsTheirTimesAndWarnsOfWhatNeverCame()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            ["when-stage = 2\nafter = \"0.1 s\"\nload-torque = \"60 N m\"", "at = \"6 s\"\nload-torque = \"50 N m\"", "when-speed-above = \"9000 rpm\"\ncommand = \"stop\""]));

        Assert.Equal([60.0, 50.0], study.Setup.Events.Select(happening => happening.LoadTorqueNewtonMetres!.Value));
        Assert.InRange(study.Setup.Events[0].AtSeconds, 0.2, 3);
        Assert.Contains("event (0.1 s after stage 2 is reached): the load's constant torque becomes 60 N m", study.Result.Timeline.Select(ReasonText.Sentence));
        int line = study.Setup.Events[1].Line + 3;
        Assert.Equal($"The event on line {line} of the case never happened: it would have come when the speed rises above 9000 r/min.", Assert.Single(study.Warnings));
    }

    [Fact]
    public void Run_StageThatTheStarterDoesNotHave_IsRefused()
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(["when-stage = 9\ncommand = \"stop\""])));

        Assert.Equal(("event.when-stage", "9 of 4 stages", "1 to 5"), (problem.Key, problem.Found, problem.Allowed));
    }

    private static RunEvent Waiting(EventConditionKind kind, double limit, double after = 0) =>
        new(double.PositiveInfinity, null, null, null) { When = new EventCondition(kind, limit, after) };

    private static TimelineEntry Happened(PlayedRun run) => Assert.Single(run.Result.Timeline, entry => entry.Event != null);

    private static PlayedRun Play(params RunEvent[] events) => PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(events));
}
