using System;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class RunJudgeTests
{
    private const string Start0 = "at = \"0 s\"\ncommand = \"start\"";

    [Fact]
    public void Judge_StoppedStartAndAnother_JudgesTheSecondFromItsOwnBeginning()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Start0, Event("0.5 s", "stop"), Event("2 s", "start")], ("limits.start-time", "3 s")));

        LimitCheck time = LineShaftCase.Check(study, "start time");
        Assert.Equal("pass", study.Verdict.Word);
        double seconds = double.Parse(time.Seen.Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.InRange(seconds, 2.6, 2.8);
        Assert.Equal("at most 155 A", LineShaftCase.Check(study, "peak current").Limit);
    }

    [Fact]
    public void Judge_SecondStartThatNeverGetsThere_FailsAfterAGoodFirstOne()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Start0, Event("5 s", "stop"), "at = \"8 s\"\nload-torque = \"240 N m\"", Event("9 s", "start")], ("run.duration", "12 s")));

        LimitCheck time = LineShaftCase.Check(study, "start time");
        Assert.False(time.Passed);
        Assert.Equal("full supply never reached", time.Seen);
        Assert.True(LineShaftCase.Check(study, "faults").Passed);
        Assert.Equal("fail", study.Verdict.Word);
    }

    [Fact]
    public void Judge_SecondStartWithoutCutouts_FailsTheStageOrder()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With([Start0, Event("5 s", "stop"), Event("7.9 s", "start")]));

        LimitCheck order = LineShaftCase.Check(study, "stage order");
        Assert.False(order.Passed);
        Assert.EndsWith(", then no cutout", order.Seen);
        Assert.StartsWith("1 2 3", order.Seen);
    }

    [Fact]
    public void Judge_EveryStartStopped_Fails()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With([Start0, Event("0.5 s", "stop")]));

        Assert.Equal("stopped before full supply", LineShaftCase.Check(study, "start time").Seen);
        Assert.False(LineShaftCase.Check(study, "start time").Passed);
    }

    // Half the supply is left under the running machine: it feeds back far more than it ever took.
    [Fact]
    public void Judge_BrakingCurrent_CountsByItsMagnitude()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            ["at = \"5 s\"\nsupply-voltage = \"110 V\""],
            ("control.instant-trip", "5 kA"), ("limits.peak-current", "5 kA"), ("limits.peak-torque", "300 N m")));

        double k = study.Setup.Machine.Constant;
        LimitCheck torque = LineShaftCase.Check(study, "peak torque");
        Assert.True(study.Record.Samples.Min(sample => sample.ArmatureAmps) < -300);
        Assert.Equal(k * study.Result.PeakAmps, study.Result.PeakTorqueNewtonMetres, 1e-9);
        Assert.True(study.Result.PeakAmps >= -study.Record.Samples.Min(sample => sample.ArmatureAmps));
        Assert.False(torque.Passed);
        Assert.True(LineShaftCase.Check(study, "peak current").Passed);
    }

    [Fact]
    public void Judge_StartPressedWhileAccelerating_LeavesThePeakBehindACutoutWhole()
    {
        Cutout alone = LineShaftCase.Run(LineShaftCase.With()).Result.Cutouts[0];
        string again = Event($"{Text.Number(Math.Ceiling(alone.Seconds * 1000 + 1) / 1000)} s", "start");

        Cutout pressed = LineShaftCase.Run(LineShaftCase.With([Start0, again])).Result.Cutouts[0];

        Assert.Equal(149, alone.PeakAmpsAfter, 0.5);
        Assert.Equal(alone.PeakAmpsAfter, pressed.PeakAmpsAfter, 1e-9);
    }

    // Exactly 3.01 stages between 155 A and 76.81 A are taken for 3, which passes 155 A by 0.17 %.
    [Fact]
    public void Judge_LoweredPeakThatRoundingLifts_IsWarnedOfAndAllowed()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("starter.switching-current", "76.81 A"), ("starter.slack", "lower peak current")));

        Assert.Equal(3, study.Design.StageCount);
        Assert.InRange(study.Design.StageCountExact, 3.001, 3.02);
        Assert.InRange(study.Design.PeakAmps, 155.1, 155.5);
        string warning = Assert.Single(study.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
        Assert.Contains("above the peak current of 155 A", warning, StringComparison.Ordinal);
        Assert.Equal($"at most {Text.Number(study.Design.WorstPeakAmps)} A", LineShaftCase.Check(study, "peak current").Limit);
        Assert.Equal("pass", study.Verdict.Word);
    }

    [Theory]
    [InlineData("last section")]
    [InlineData("lower peak current")]
    public void Judge_TooFewStages_WarnsAndFailsAtTheGivenPeak(string slack)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("starter.stages", "2"), ("starter.slack", slack)));

        LimitCheck peak = LineShaftCase.Check(study, "peak current");
        Assert.Contains(study.Warnings, text => text.Contains("above the peak current of 155 A: 2 stages are taken for", StringComparison.Ordinal));
        Assert.Equal("at most 155 A", peak.Limit);
        Assert.False(peak.Passed);
    }

    // The emergency stop is latched on the tick that reads it, at 1 s.
    [Theory]
    [InlineData("emergency stop", null, null, "pass")]
    [InlineData("emergency stop", "1 s", "tripped", "pass")]
    [InlineData("emergency stop", "0.99 s", null, "fail")]
    [InlineData("overcurrent", null, null, "fail")]
    [InlineData("emergency stop", null, "running", "fail")]
    public void Judge_ExpectedFault_PassesExactlyWhenItIsTheFirstAndInTime(string fault, string? by, string? phase, string word)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Event("1 s", "emergency stop")], ("expect.fault", fault), ("expect.by", by), ("expect.phase", phase), ("limits.start-time", null), ("run.duration", "2 s")));

        Assert.Equal(word, study.Verdict.Word);
        Assert.DoesNotContain(study.Verdict.Checks, check => check.Name is "peak current" or "start time" or "stage order" or "faults");
    }

    [Fact]
    public void Judge_ExpectedFault_StillHoldsTheLimitsOfTheFile()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Event("1 s", "emergency stop")], ("expect.fault", "emergency stop"), ("limits.peak-current", "100 A"), ("run.duration", "2 s")));

        Assert.True(LineShaftCase.Check(study, "expected fault").Passed);
        Assert.False(LineShaftCase.Check(study, "peak current").Passed);
        Assert.Equal("fail", study.Verdict.Word);
    }

    [Fact]
    public void Judge_NoFaultWhereOneIsExpected_Fails()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("expect.fault", "stalled")));

        Assert.Equal("none", LineShaftCase.Check(study, "expected fault").Seen);
        Assert.Equal("fail", study.Verdict.Word);
    }

    [Fact]
    public void ExpectPhase_Choices_AreThePhasesThatARunCanEndIn() =>
        Assert.Equal(PhaseText.All.Order(StringComparer.Ordinal), CaseKeys.ExpectPhase.Choices.Order(StringComparer.Ordinal));

    private static string Event(string at, string command) => $"at = \"{at}\"\ncommand = \"{command}\"";
}
