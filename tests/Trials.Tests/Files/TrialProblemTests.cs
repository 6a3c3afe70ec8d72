using Xunit;

namespace StarterCtl.Trials.Tests.Files;

/// <summary>What is wrong with a trial is said with file, line, key, what was found and what is allowed.</summary>
public sealed class TrialProblemTests
{
    [Theory]
    [InlineData("signal = \"armatureAmp\"\nat-most = \"5 A\"", 4, "expect.signal: found \"armatureAmp\"", "the nearest is \"armatureAmps\"")]
    [InlineData("signal = \"armatureAmps\"\nat-most = \"5 V\"", 5, "expect.at-most: found \"5 V\", a voltage", "a current in A")]
    [InlineData("signal = \"armatureAmps\"\nat-most = 5", 5, "expect.at-most: found 5, a number without a unit", "a current in A")]
    [InlineData("signal = \"phase\"\nreaches = \"Runing\"", 5, "expect.reaches: found \"Runing\"", "the nearest is \"Running\"")]
    [InlineData("signal = \"stage\"\nreaches = \"two\"", 5, "expect.reaches: found \"two\"", "a plain number, for stage")]
    [InlineData("signal = \"phase\"\nat-least = \"Running\"", 5, "expect.at-least: found it for phase, a word", "reaches, never, order or settles")]
    [InlineData("signal = \"armatureAmps\"\nnever = \"5 A\"", 5, "expect.never: found it for armatureAmps, a quantity", "at-least, at-most, stays-within, reaches or settles")]
    [InlineData("signal = \"armatureAmps\"\nat-least = \"1 A\"\nat-most = \"5 A\"", 6, "found at-least and at-most together", "exactly one of")]
    [InlineData("signal = \"armatureAmps\"", 2, "found nothing that is expected", "exactly one of reaches, never")]
    [InlineData("signal = \"armatureAmps\"\nstays-within = [\"5 A\", \"1 A\"]", 5, "a lower value above the upper one", "the lower value first")]
    [InlineData("signal = \"armatureAmps\"\nstays-within = [\"5 A\"]", 5, "a list of 1", "a list of 2 values")]
    [InlineData("signal = \"phase\"\norder = [\"Ready\", \"Running\", \"Ready\"]", 5, "the same twice", "each once")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nto = \"6.5 s\"", 6, "expect.to: found \"6.5 s\", after the end of the run", "up to run.duration, 6 s")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nfrom = \"7 s\"", 6, "expect.from: found \"7 s\", after the end of the run", "up to run.duration, 6 s")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nfrom = \"3 s\"\nto = \"2 s\"", 7, "an end, \"2 s\", before the beginning, \"3 s\"", "from before the end")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nwithin = \"2 s\"", 6, "expect.within: found it without after-event", "after-event beside it")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nafter-event = 1", 6, "expect.after-event: found event 1 of 0", "an [[event]] in this file")]
    [InlineData("signal = \"armatureAmps\"\nsettles = \"5 A\"\nfor = \"1 s\"", 2, "expect.tolerance: found nothing", "a current in A")]
    [InlineData("signal = \"armatureAmps\"\nsettles = \"5 A\"\ntolerance = \"1 A\"", 2, "expect.for: found nothing", "0 to 3600 s")]
    [InlineData("fault = \"overlod\"", 4, "expect.fault: found \"overlod\"", "the nearest is \"overload\"")]
    [InlineData("fault = \"overload\"\nsignal = \"phase\"", 5, "expect.signal: found it beside fault", "a fault has no signal")]
    [InlineData("fault = \"overload\"\ntolerance = \"1 s\"", 5, "expect.tolerance: found it beside fault", "only settles has one")]
    [InlineData("fault = \"overload\"\nwithing = \"1 s\"", 5, "expect.withing: found an unknown key", "within is the nearest known key")]
    public void Expectation_ThatMakesNoSense_IsRefusedOnItsLine(string keys, int line, string found, string allowed)
    {
        string problem = Assert.Single(Texts.Refused($"{Texts.Head}[[expect]]\nname = \"x\"\n{keys}\n"));

        Assert.StartsWith($"{Texts.File}:{line}: ", problem);
        Assert.Contains(found, problem);
        Assert.Contains(allowed, problem);
    }

    [Theory]
    [InlineData("[set]\n\"load.constant-torqe\" = \"1 N m\"\n", "rig.trial.toml:3: load.constant-torqe: found an unknown key; allowed: load.constant-torque is the nearest known key")]
    [InlineData("[set]\nexpect.fault = \"overload\"\n", "rig.trial.toml:3: expect: found a key that a trial does not set; allowed: [[event]] for what happens, [[expect]] for what is expected")]
    [InlineData("[sett]\nrun.duration = \"1 s\"\n", "rig.trial.toml:2: found the unknown table [sett]; allowed: [set], [[event]], [[expect]] or [[parameters]]")]
    [InlineData("[expect]\nname = \"x\"\n", "rig.trial.toml:2: found [expect]; allowed: [[expect]] with two brackets, once for each")]
    [InlineData("[[set]]\nrun.duration = \"1 s\"\n", "rig.trial.toml:2: found [[set]]; allowed: [set] with one bracket")]
    [InlineData("tag = [\"a\"]\n", "rig.trial.toml:2: tag: found an unknown key; allowed: tags is the nearest known key")]
    [InlineData("tags = [\"a b\"]\n", "rig.trial.toml:2: tags: found \"a b\"; allowed: a list of words of letters, digits and hyphens, e.g. [\"fault\", \"start\"]")]
    [InlineData("keep-events = \"no way\"\n", "rig.trial.toml:2: keep-events: found \"no way\"; allowed: \"yes\" or \"no\"")]
    [InlineData("[[event]]\nat = \"1 s\"\nspeed-signal = \"{signal}\"\n", "rig.trial.toml:4: found the parameter \"signal\"; allowed: a parameter that every [[parameters]] has; the file has none")]
    [InlineData("[[parameters]]\nname = \"a\"\ntorque = \"1 N m\"\n", "rig.trial.toml:4: parameters.torque: found a parameter that nothing uses; allowed: \"{torque}\" as a value somewhere in the file")]
    public void File_WithAMistake_IsRefusedByFileLineAndKey(string part, string expected)
    {
        Assert.Contains(expected, Texts.Refused(Texts.Head + part + Texts.AnyExpectation));
    }

    [Theory]
    [InlineData("[set]\n\"load.constant-torque\" = \"1 A\"\n", "rig.trial.toml:3: load.constant-torque: found \"1 A\", a current")]
    [InlineData("[set]\n\"run.duration\" = \"3 s\"\n[[event]]\nat = \"4 s\"\nload-torque = \"1 N m\"\n", "rig.trial.toml:5: event.at: found \"4 s\", after the end of the run; allowed: up to run.duration, 3 s")]
    [InlineData("[set]\n\"contactors.drop-out-voltage\" = 0.9\n", "rig.trial.toml:3: contactors.drop-out-voltage: found a coil that lets go below 0.9 and closes from 0.85")]
    [InlineData("[[event]]\nat = \"1 s\"\ncontact = \"brake\"\ncontact-fault = \"welded\"\n", "rig.trial.toml:2: event.contact: found it in a case without a brake")]
    public void Case_ThatTheTrialSpoils_IsRefusedWithTheTrialsLine(string part, string expected)
    {
        Assert.StartsWith(expected, Assert.Single(Texts.Refused(Texts.Head + part + Texts.AnyExpectation)));
    }

    [Fact]
    public void Rows_WithTheSameMistake_AreOneProblem()
    {
        string[] problems = Texts.Refused(Texts.Head + "[[expect]]\nname = \"{x}\"\nsignal = \"armatureAmp\"\nat-most = \"1 A\"\n[[parameters]]\nname = \"a\"\nx = \"p\"\n[[parameters]]\nname = \"b\"\nx = \"q\"\n");

        Assert.Single(problems);
    }

    [Fact]
    public void Rows_OfOneName_AreRefused() => Assert.StartsWith(
        "rig.trial.toml:10: parameters.name: found \"a\" a second time",
        Assert.Single(Texts.Refused(Texts.Head + Texts.AnyExpectation + "[[parameters]]\nname = \"a\"\n\n[[parameters]]\nname = \"a\"\n")));

    [Theory]
    [InlineData("signal = \"phase\"\nnever = \"Running\"", "signal = \"phase\"\nreaches = \"Running\"")]
    [InlineData("signal = \"phase\"\nreaches = \"Running\"\nto = \"3 s\"", "signal = \"phase\"\nnever = \"Running\"")]
    [InlineData("signal = \"armatureAmps\"\nat-most = \"30 A\"", "signal = \"armatureAmps\"\nreaches = \"31 A\"")]
    [InlineData("signal = \"armatureAmps\"\nat-least = \"2 A\"", "signal = \"armatureAmps\"\nat-most = \"1 A\"\nto = \"2 s\"")]
    [InlineData("signal = \"armatureAmps\"\nstays-within = [\"0 A\", \"9 A\"]", "signal = \"armatureAmps\"\nsettles = \"12 A\"\ntolerance = \"2 A\"\nfor = \"1 s\"")]
    [InlineData("fault = \"overload\"", "signal = \"phase\"\nsettles = \"Running\"\nfor = \"1 s\"")]
    [InlineData("fault = \"overload\"", "fault = \"stalled\"")]
    [InlineData("fault = \"overload\"\nto = \"2 s\"", "fault = \"none\"")]
    [InlineData("fault = \"none\"", "signal = \"phase\"\nreaches = \"Tripped\"")]
    [InlineData("fault = \"overload\"", "signal = \"phase\"\nnever = \"Tripped\"")]
    public void Expectations_ThatCannotBothHold_AreRefused(string one, string other)
    {
        string text = $"{Texts.Head}[[expect]]\nname = \"one\"\n{one}\n[[expect]]\nname = \"other\"\n{other}\n";

        string problem = Assert.Single(Texts.Refused(text));

        Assert.StartsWith($"{Texts.File}:{Texts.LineOf(text, "name = \"other\"") - 1}: expect: found \"other\" beside \"one\" on line 2, which cannot both hold", problem);
    }

    [Theory]
    [InlineData("signal = \"phase\"\nnever = \"Running\"\nto = \"1 s\"", "signal = \"phase\"\nreaches = \"Running\"")]
    [InlineData("signal = \"armatureAmps\"\nat-most = \"30 A\"\nfrom = \"1 s\"", "signal = \"armatureAmps\"\nreaches = \"31 A\"")]
    [InlineData("fault = \"none\"\nto = \"1 s\"", "fault = \"overload\"\nfrom = \"1 s\"")]
    [InlineData("fault = \"overload\"", "signal = \"phase\"\nreaches = \"Running\"")]
    public void Expectations_OfDifferentTimes_StandBesideEachOther(string one, string other) =>
        Assert.Equal(2, Texts.ReadOne($"{Texts.Head}[[expect]]\nname = \"one\"\n{one}\n[[expect]]\nname = \"other\"\n{other}\n").Expectations.Count);
}
