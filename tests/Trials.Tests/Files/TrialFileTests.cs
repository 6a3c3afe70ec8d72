using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Trials.Judging;
using Xunit;

namespace StarterCtl.Trials.Tests.Files;

public sealed class TrialFileTests
{
    [Fact]
    public void Trial_WithoutRows_IsNamedByItsFileAndRunsTheCase()
    {
        Trial trial = Texts.ReadOne(Texts.Head + "title = \"The rig\"\ntags = [\"start\", \"48-v\"]\n" + Texts.AnyExpectation);

        Assert.Equal(("rig", "The rig", "", "start 48-v", 1), (trial.Name, trial.Title, trial.Row, string.Join(' ', trial.Tags), trial.Seed));
        Assert.Equal(48, trial.Job.Run.Setup.Supply.OpenCircuitVolts);
        Assert.Equal(trial.Case.Sha256, trial.Job.CaseSha256);
    }

    [Fact]
    public void Set_ByDottedOrQuotedPath_TakesThePlaceOfTheCasesKey()
    {
        Trial trial = Texts.ReadOne(Texts.Head + "[set]\nload.constant-torque = \"0.6 N m\"\n\"sensors.seed\" = 9\nstarter.peak-current = \"200 %\"\nmotor.rated-current = \"15 A\"\n" + Texts.AnyExpectation);

        Assert.Equal(0.6, trial.Job.Run.Setup.Load.ConstantNewtonMetres);
        Assert.Equal(9, trial.Seed);

        // 200 % of the rated current that the same trial sets.
        Assert.Equal(30, trial.Case.Number(CaseKeys.StarterPeakCurrent));
    }

    [Theory]
    [InlineData("", "1 s start")]
    [InlineData("keep-events = \"yes\"\n", "1 s start, 4 s")]
    public void Events_OfATrial_TakeThePlaceOfTheCasesUnlessTheyAreKept(string keep, string expected)
    {
        Trial trial = Texts.ReadOne(Texts.Head + keep + "[[event]]\nat = \"1 s\"\ncommand = \"start\"\n" + Texts.AnyExpectation);

        Assert.Equal(expected, string.Join(", ", trial.Case.Events.Select(happening => $"{happening.AtSeconds} s {happening.Command}".Trim())));
    }

    [Fact]
    public void Rows_OfParameters_MakeATrialEach()
    {
        Trial[] trials = Texts.Read("case = \"{file}\"\n[[expect]]\nname = \"peak\"\nsignal = \"armatureAmps\"\nat-most = \"{peak}\"\n"
            + "[[parameters]]\nname = \"rig\"\nfile = \"bench-rig.toml\"\npeak = \"32 A\"\n[[parameters]]\nname = \"shaft\"\nfile = \"line-shaft.toml\"\npeak = \"156 A\"\n");

        Assert.Equal(["rig [rig] 48 32", "rig [shaft] 220 156"], trials.Select(trial => $"{trial.Name} {trial.Job.Run.Setup.Supply.OpenCircuitVolts} {trial.Expectations[0].Numbers[0]}"));
    }

    [Fact]
    public void Expectation_OfEachKind_IsReadWithItsUnitsAndWindow()
    {
        Trial trial = Texts.ReadOne(Texts.Head + """
            [[event]]
            at = "1 s"
            speed-signal = "lost"
            [[expect]]
            name = "speed"
            signal = "speedRadPerSec"
            settles = "3000 rpm"
            tolerance = "30 rpm"
            for = "0.5 s"
            from = "2 s"
            to = "5 s"
            [[expect]]
            name = "order"
            signal = "phase"
            order = ["Ready", "Accelerating", "Running"]
            [[expect]]
            name = "band"
            signal = "supplyVolts"
            stays-within = ["47 V", "49 V"]
            [[expect]]
            name = "trip"
            fault = "speed signal lost"
            after-event = 1
            within = "50 ms"
            """);

        Expectation settles = trial.Expectations[0];
        Assert.Equal((314.159, 3.14159, 0.5), (settles.Numbers[0], settles.Tolerance, settles.HoldSeconds), (a, b) => System.Math.Abs(a.Item1 - b.Item1) < 1e-3 && System.Math.Abs(a.Item2 - b.Item2) < 1e-5 && a.Item3 == b.Item3);
        Assert.Equal(
            [
                "speedRadPerSec settles at 3000 r/min within 30 r/min for 0.5 s, from 2 to 5 s",
                "phase in the order Ready, Accelerating, Running",
                "supplyVolts within 47 V and 49 V",
                "speed signal lost as the first fault, within 0.05 s after event 1",
            ],
            trial.Expectations.Select(expectation => expectation.Limit));
        Assert.Equal((FaultId.SpeedSignalLost, 1.0), (trial.Expectations[3].Fault, trial.Expectations[3].Window.After!.AtSeconds));
    }

    [Fact]
    public void WordsOfEverySignal_AreKnown()
    {
        // Whoever adds a signal of words or a new unit has to say how a trial writes it.
        Assert.All(StarterCtl.Engine.Records.SignalTable.All, signal =>
        {
            Trial trial = Texts.ReadOne($"{Texts.Head}[[expect]]\nname = \"x\"\nsignal = \"{signal.Name}\"\nreaches = {Value(signal.Name, signal.Unit)}\n");
            Assert.Equal(signal.Name, trial.Expectations[0].Signal!.Name);
        });

        static string Value(string name, string unit) => name switch
        {
            "phase" => "\"Running\"",
            "reason" => "\"WaitingForStart\"",
            "fault" => "\"Overload\"",
            _ => unit.Length == 0 ? "1" : $"\"1 {unit}\"",
        };
    }
}
