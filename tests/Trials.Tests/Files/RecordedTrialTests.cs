using System.IO;
using System.Linq;
using System.Text;
using StarterCtl.Engine.Records;
using StarterCtl.House;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;
using StarterCtl.Trials.Tests.Running;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Trials.Tests.Files;

public sealed class RecordedTrialTests
{
    [Fact]
    public void Trial_MadeOfARecord_RunsAndPasses()
    {
        // A start, a guard that opens at 3 s, a reset at 4.5 s behind its closing at 4 s: all of it is in the inputs.
        Trial recorded = Texts.ReadOne(Texts.Head + "[set]\nprotection.permissives = 1\n[[event]]\nat = \"0.2 s\"\ncommand = \"start\"\n[[event]]\nat = \"3 s\"\npermissives = 0\n"
            + "[[event]]\nat = \"4 s\"\npermissives = 1\n[[event]]\nat = \"4.5 s\"\ncommand = \"reset\"\n" + Texts.AnyExpectation);

        string text = Made(recorded);
        Trial made = Assert.Single(TrialFile.Read("made.trial.toml", Encoding.UTF8.GetBytes(text.Replace("[set]\n", "[set]\nprotection.permissives = 1\n", System.StringComparison.Ordinal)), Case));
        TrialResult result = TrialRunner.Run([made], new SimulatorTarget(), new TrialOptions(), new Watched(), new Watched(), TestContext.Current.CancellationToken)[0];

        Assert.Equal(["0.2 start ", "3  0", "4  1", "4.5 reset "], made.Case.Events.Select(happening => FormattableString(happening.AtSeconds, happening.Command, happening.Permissives)));
        Assert.Equal(["stage 2", "stage 3", "fault"], made.Expectations.Select(expectation => expectation.Name));
        Assert.Equal("permissive lost as the first fault, from 2.72 to 3.28 s", made.Expectations[2].Limit);
        Assert.True(result.Verdict == TrialVerdict.Pass, result.Last!.Why);

        static string FormattableString(double at, string? command, int? permissives) => System.FormattableString.Invariant($"{at} {command} {permissives}");
    }

    [Fact]
    public void Speed_ThatIsLostForGood_BecomesAnEventInItsPlace()
    {
        Trial recorded = Texts.ReadOne(Texts.Head + "[[event]]\nat = \"0 s\"\ncommand = \"start\"\n[[event]]\nat = \"1 s\"\nspeed-signal = \"lost\"\n[[event]]\nat = \"2 s\"\ncommand = \"stop\"\n" + Texts.AnyExpectation);

        Trial made = Assert.Single(TrialFile.Read("made.trial.toml", Encoding.UTF8.GetBytes(Made(recorded)), Case));

        Assert.Equal(["0 start", "1 lost", "2 stop"], made.Case.Events.Select(happening => $"{happening.AtSeconds} {happening.Command}{happening.SpeedSignal}"));
    }

    [Fact]
    public void Record_WithoutAPressOfStart_IsRefused()
    {
        Trial recorded = Texts.ReadOne(Texts.Head + "[[event]]\nwhen-speed-above = \"5000 rpm\"\ncommand = \"start\"\n" + Texts.AnyExpectation);

        Assert.Contains("no press of start", Assert.Throws<RecordException>(() => Made(recorded)).Message, System.StringComparison.Ordinal);
    }

    private static byte[] Case(string path) => File.ReadAllBytes(Path.Combine(Repository.Root, "sim", "cases", Path.GetFileName(path)));

    private static string Made(Trial recorded)
    {
        Record record = new(1000);
        new SimulatorTarget().Run(recorded.Job, record, null, TestContext.Current.CancellationToken);
        RecordHeader header = RecordHeader.Of(recorded.Case, recorded.Job.Run.Setup, recorded.Job.Run.Settings, 1000);
        return RecordedTrial.Of("rig.record.csv", header, record.Samples, "bench-rig.toml");
    }
}
