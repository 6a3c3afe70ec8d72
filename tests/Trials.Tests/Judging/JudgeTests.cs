using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Judging;
using Xunit;

namespace StarterCtl.Trials.Tests.Judging;

/// <summary>Each judge on courses with round numbers, our own.</summary>
public sealed class JudgeTests
{
    // 10 A at 0 s, 1 A less every second; 4 A at 6 s.
    private static Sample Falling(double seconds) => Course.Amps(10 - seconds);

    private static Sample Starting(double seconds) => Course.In(seconds < 1 ? Phase.Ready : seconds < 3 ? Phase.Accelerating : Phase.Running);

    [Theory]
    [InlineData("at-most = \"10 A\"", true, "most 10 A at 0 s")]
    [InlineData("at-most = \"9.9 A\"", false, "most 10 A at 0 s")]
    [InlineData("at-most = \"8 A\"\nfrom = \"2 s\"", true, "most 8 A at 2 s")]
    [InlineData("at-most = \"8 A\"\nfrom = \"1.9 s\"", false, "most 8.1 A at 1.9 s")]
    [InlineData("at-least = \"4 A\"", true, "least 4 A at 6 s")]
    [InlineData("at-least = \"4.1 A\"", false, "least 4 A at 6 s")]
    [InlineData("at-least = \"7 A\"\nto = \"3 s\"", true, "least 7 A at 3 s")]
    [InlineData("stays-within = [\"4 A\", \"10 A\"]", true, "least 4 A at 6 s, most 10 A at 0 s")]
    [InlineData("stays-within = [\"5 A\", \"10 A\"]", false, "least 4 A at 6 s, most 10 A at 0 s")]
    [InlineData("stays-within = [\"4 A\", \"9 A\"]", false, "least 4 A at 6 s, most 10 A at 0 s")]
    public void Band_HoldsEverySampleOfTheWindow_AndShowsTheWorst(string keys, bool passed, string seen) => AssertJudged("signal = \"armatureAmps\"\n" + keys, Falling, passed, seen);

    [Theory]
    [InlineData("7.05 A", "", true, "7 A at 3 s")]
    [InlineData("3.9 A", "", false, "never; nearest 4 A at 6 s")]
    [InlineData("7 A", "to = \"2.9 s\"", false, "never; nearest 7.1 A at 2.9 s")]
    [InlineData("10 A", "", true, "10 A at 0 s")]
    [InlineData("11 A", "", false, "never; nearest 10 A at 0 s")]
    public void Reach_OfAQuantity_CountsFromTheSideOnWhichItBegins(string value, string window, bool passed, string seen) =>
        AssertJudged($"signal = \"armatureAmps\"\nreaches = \"{value}\"\n{window}", Falling, passed, seen);

    [Fact]
    public void Reach_OfARisingQuantity_IsTheFirstSampleAtOrAboveIt() =>
        AssertJudged("signal = \"armatureAmps\"\nreaches = \"2.5 A\"", seconds => Course.Amps(seconds), true, "2.5 A at 2.5 s");

    [Theory]
    [InlineData("reaches = \"Running\"", true, "Running at 3 s")]
    [InlineData("reaches = \"Running\"\nto = \"2.9 s\"", false, "never; Accelerating at 2.9 s")]
    [InlineData("never = \"Tripped\"", true, "never, up to 6 s")]
    [InlineData("never = \"Running\"", false, "Running at 3 s")]
    [InlineData("never = \"Running\"\nto = \"2.9 s\"", true, "never, up to 2.9 s")]
    [InlineData("order = [\"Ready\", \"Running\"]", true, "Ready at 0 s, Running at 3 s")]
    [InlineData("order = [\"Ready\", \"Accelerating\", \"Running\"]", true, "Ready at 0 s, Accelerating at 1 s, Running at 3 s")]
    [InlineData("order = [\"Ready\", \"Running\", \"Accelerating\"]", false, "Ready at 0 s, Accelerating at 1 s, Running at 3 s")]
    [InlineData("order = [\"Ready\", \"Braking\"]", false, "Ready at 0 s, Braking never")]
    [InlineData("settles = \"Running\"\nfor = \"3 s\"", true, "Running at 6 s, there from 3 s on")]
    [InlineData("settles = \"Running\"\nfor = \"3.1 s\"", false, "Running at 6 s, there from 3 s on")]
    [InlineData("settles = \"Accelerating\"\nfor = \"0 s\"", false, "Running at 6 s, not there")]
    public void Words_OfAPhase_AreJudgedByName(string keys, bool passed, string seen) => AssertJudged("signal = \"phase\"\n" + keys, Starting, passed, seen);

    [Fact]
    public void Order_MindsOnlyTheFirstTimes() => AssertJudged(
        "signal = \"phase\"\norder = [\"Accelerating\", \"Running\"]",
        seconds => Course.In(seconds < 1 ? Phase.Accelerating : seconds < 2 ? Phase.Running : seconds < 3 ? Phase.Accelerating : Phase.Running),
        true,
        "Accelerating at 0 s, Running at 1 s");

    [Theory]
    [InlineData("5 A", "1 A", "2 s", true, "4 A at 6 s, there from 4 s on")]
    [InlineData("5 A", "1 A", "2.1 s", false, "4 A at 6 s, there from 4 s on")]
    [InlineData("7 A", "1 A", "0 s", false, "4 A at 6 s, not there")]
    public void Settling_AsksForTheBandWithoutABreakUpToTheEnd(string value, string tolerance, string hold, bool passed, string seen) =>
        AssertJudged($"signal = \"armatureAmps\"\nsettles = \"{value}\"\ntolerance = \"{tolerance}\"\nfor = \"{hold}\"", Falling, passed, seen);

    [Fact]
    public void Settling_WithABreak_CountsFromItsEnd() => AssertJudged(
        "signal = \"armatureAmps\"\nsettles = \"5 A\"\ntolerance = \"1 A\"\nfor = \"2 s\"",
        seconds => Course.Amps(seconds == 4.5 ? 9 : 5),
        false,
        "5 A at 6 s, there from 4.6 s on");

    [Theory]
    [InlineData("fault = \"overload\"", true, "overload at 2 s")]
    [InlineData("fault = \"overload\"\nto = \"2 s\"", true, "overload at 2 s")]
    [InlineData("fault = \"overload\"\nto = \"1.9 s\"", false, "overload at 2 s")]
    [InlineData("fault = \"overload\"\nfrom = \"2.1 s\"", false, "overload at 2 s")]
    [InlineData("fault = \"stalled\"", false, "overload at 2 s")]
    [InlineData("fault = \"none\"", false, "overload at 2 s")]
    [InlineData("fault = \"none\"\nto = \"1.9 s\"", true, "no fault")]
    [InlineData("fault = \"none\"\nfrom = \"4 s\"", false, "stalled at 5 s")]
    public void Fault_IsTheFirstOfTheTrialAndInTheWindow(string keys, bool passed, string seen) => AssertJudged(
        keys,
        // Overload from 2 s, reset at 4 s, stalled from 5 s.
        seconds => Course.Plain with { Fault = seconds < 2 ? FaultId.None : seconds < 4 ? FaultId.Overload : seconds < 5 ? FaultId.None : FaultId.Stalled },
        passed,
        seen);

    [Theory]
    [InlineData("at = \"2 s\"", "most 8 A at 2 s")]
    [InlineData("when-stage = 2\nafter = \"0.5 s\"", "most 6.5 A at 3.5 s")]
    [InlineData("when-speed-above = \"300 rpm\"", "most 7.9 A at 2.1 s")]
    public void Window_AfterAnEvent_OpensWithIt(string moment, string seen) => AssertJudged(
        "signal = \"armatureAmps\"\nat-most = \"9 A\"\nafter-event = 1\nwithin = \"1 s\"",
        // Stage 1 from the beginning, 2 from 3 s; 15 rad/s a second, which passes 31.4 rad/s on the way to 2.1 s.
        seconds => Falling(seconds) with { Phase = Phase.Accelerating, Stage = seconds < 3 ? 1 : 2, SpeedRadPerSec = (float)(15 * seconds) },
        true,
        seen,
        $"[[event]]\n{moment}\nload-torque = \"1 N m\"\n");

    [Fact]
    public void Window_OfAnEventThatNeverHappens_FailsAndSaysSo() => AssertJudged(
        "signal = \"armatureAmps\"\nat-most = \"99 A\"\nafter-event = 1", Falling, false, "event 1 never happened", "[[event]]\nwhen-stage = 3\nload-torque = \"1 N m\"\n");

    [Fact]
    public void Window_OfAConditionThatHoldsFromTheBeginning_WaitsUntilItHasCeased() => AssertJudged(
        "signal = \"armatureAmps\"\nat-most = \"99 A\"\nafter-event = 1",
        // Stage 1 all along but for the fourth second.
        seconds => Falling(seconds) with { Phase = Phase.Accelerating, Stage = seconds is >= 4 and < 5 ? 0 : 1 },
        true,
        "most 5 A at 5 s",
        "[[event]]\nwhen-stage = 1\nload-torque = \"1 N m\"\n");

    [Fact]
    public void Window_ThatTheTrialDidNotReach_FailsAndSaysWhereItEnded()
    {
        Trial trial = Texts.ReadOne($"{Texts.Head}[[expect]]\nname = \"x\"\nsignal = \"armatureAmps\"\nat-most = \"99 A\"\nfrom = \"5 s\"\n");
        TrialJudges judges = new(trial.Expectations, 1000);
        judges.Add(Course.Plain with { TimeSeconds = 1.25 });

        Assert.Equal((false, "nothing: the trial ended at 1.25 s"), (judges.End()[0].Passed, judges.End()[0].Seen));
    }

    [Fact]
    public void Band_OfASignalThatIsEmpty_HasSeenNothing() =>
        AssertJudged("signal = \"resistiveBackEmfVolts\"\nat-most = \"99 V\"", _ => Course.Plain, false, "no value at any time");

    [Fact]
    public void PowerUpTick_BeforeZero_IsNotInTheWindow() =>
        AssertJudged("signal = \"armatureAmps\"\nat-most = \"5 A\"", seconds => Course.Amps(seconds < 0 ? 50 : 5), true, "most 5 A at 0 s");

    private static void AssertJudged(string keys, System.Func<double, Sample> at, bool passed, string seen, string events = "")
    {
        Outcome outcome = Course.Judged(keys, at, events);

        Assert.Equal((passed, seen), (outcome.Passed, outcome.Seen));
    }
}
