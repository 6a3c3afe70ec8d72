using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;
using Xunit;

namespace StarterCtl.Trials.Tests.Running;

public sealed class TrialRunnerTests
{
    // The stub's current is the number of its go, so a limit of 1 A fails every go but the first.
    private static readonly Trial[] Three = Texts.Read(Texts.Head + "[[expect]]\nname = \"peak\"\nsignal = \"armatureAmps\"\nat-most = \"{peak}\"\nto = \"1 s\"\n"
        + string.Concat(new[] { "a", "b", "c" }.Select(name => $"[[parameters]]\nname = \"{name}\"\npeak = \"{(name == "b" ? 1 : 100)} A\"\n")));

    private readonly Watched _watched = new();

    [Fact]
    public void Hardware_RunsOneAtATimeInOrder()
    {
        // Long enough that two at once would meet.
        StubTarget target = new(true, _ => Thread.Sleep(20));

        IReadOnlyList<TrialResult> results = Run(target, new TrialOptions());

        Assert.Equal((3, 1), (target.Goes, target.MostAtOnce));
        Assert.Equal([TrialVerdict.Pass, TrialVerdict.Fail, TrialVerdict.Pass], results.Select(result => result.Verdict));
        Assert.Equal(["a 1 Pass", "b 1 Fail", "c 1 Pass"], _watched.Ended);
        Assert.Equal("peak: most 2 A at 0 s, expected armatureAmps at most 1 A, up to 1 s", results[1].Last!.Why);
        Assert.Equal([1 / 3.0, 2 / 3.0, 1.0], _watched.Progress);
    }

    [Fact]
    public void FailFast_LeavesTheRestNotRun() => Assert.Equal(
        [TrialVerdict.Pass, TrialVerdict.Fail, TrialVerdict.NotRun],
        Run(new StubTarget(true, StubTarget.Fine), new TrialOptions { FailsFast = true }).Select(result => result.Verdict));

    [Fact]
    public void Trouble_IsAnErrorAndKeepsWhatWasSeen()
    {
        TrialResult result = Run(new StubTarget(true, StubTarget.Unplugged, StubTarget.Fine), new TrialOptions())[0];

        Assert.Equal((TrialVerdict.Error, "the port is gone", 1.0), (result.Verdict, result.Last!.Trouble, result.Last.Seconds));
        Assert.Equal("most 1 A at 0 s", result.Last.Outcomes[0].Seen);
    }

    [Fact]
    public void Retry_TriesTroubleAndFailureAgain_AndShowsEveryAttempt()
    {
        IReadOnlyList<TrialResult> results = Run(new StubTarget(true, StubTarget.Unplugged, StubTarget.Fine), new TrialOptions { Retries = 2 });

        // a: error, pass; b: fails all three times; c: pass.
        Assert.Equal(["a 1 Error", "a 2 Pass", "b 1 Fail", "b 2 Fail", "b 3 Fail", "c 1 Pass"], _watched.Ended);
        Assert.Equal([2, 3, 1], results.Select(result => result.Attempts.Count));
    }

    [Fact]
    public void Cancellation_AbortsTheTrialInTheMiddleAndRunsNoOther()
    {
        using CancellationTokenSource cancelled = new();
        StubTarget target = new(true, StubTarget.Fine, cancellation =>
        {
            cancelled.Cancel();
            cancellation.ThrowIfCancellationRequested();
        });

        IReadOnlyList<TrialResult> results = TrialRunner.Run(Three, target, new TrialOptions { Retries = 3 }, _watched, _watched, cancelled.Token);

        Assert.Equal([TrialVerdict.Pass, TrialVerdict.Aborted, TrialVerdict.NotRun], results.Select(result => result.Verdict));
    }

    [Fact]
    public void Watcher_WhoseDiskIsFull_EndsTheRun()
    {
        Watched full = new() { OnDone = _ => throw new IOException("full") };

        Assert.Throws<IOException>(() => TrialRunner.Run(Three, new StubTarget(true, StubTarget.Fine), new TrialOptions(), full, full, CancellationToken.None));
    }

    [Fact]
    public void Simulator_GivesEachTrialItsVerdictInTheOrderOfTheFile()
    {
        Trial[] trials = Texts.Read(Texts.Head + "[set]\nload.constant-torque = \"{torque}\"\n[[expect]]\nname = \"running\"\nsignal = \"phase\"\nreaches = \"Running\"\nto = \"2.7 s\"\n"
            + string.Concat(Enumerable.Range(0, 8).Select(i => $"[[parameters]]\nname = \"{i}\"\ntorque = \"{(i % 2 == 0 ? "0.2" : "1.5")} N m\"\n")));

        IReadOnlyList<TrialResult> results = TrialRunner.Run(trials, new SimulatorTarget(), new TrialOptions(), _watched, new Watched(), TestContext.Current.CancellationToken);

        // With 1.5 N m the start takes longer than 2.7 s, with 0.2 N m it does not.
        Assert.Equal(Enumerable.Range(0, 8).Select(i => i % 2 == 0 ? TrialVerdict.Pass : TrialVerdict.Fail), results.Select(result => result.Verdict));
        Assert.Equal(8, _watched.Ended.Count);
    }

    private IReadOnlyList<TrialResult> Run(StubTarget target, TrialOptions options) =>
        TrialRunner.Run(Three, target, options, _watched, _watched, TestContext.Current.CancellationToken);
}
