using System;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.House;
using StarterCtl.Trials.Targets;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Trials.Tests.Targets;

/// <summary>The whole firmware behind its link, with the machine simulated here.</summary>
public sealed class DeskTargetTests
{
    private static readonly CaseFile BenchRig = Case("bench-rig.toml");

    // However busy the machine is, the board is given its time.
    private static readonly TargetTiming Patient = new() { Connect = TimeSpan.FromSeconds(60), Step = TimeSpan.FromSeconds(20), MakeSafe = TimeSpan.FromSeconds(10) };

    // Every reading and decision, to the last bit: the board's controller is the simulator's, and nothing on the way changes a number.
    [Theory]
    [InlineData("bench-rig.toml")]
    [InlineData("stage-refuses.toml")]
    [InlineData("field-loss.toml")]
    [InlineData("crane-travel.toml")]
    public void Run_InLockstep_IsTheSimulatorsRunSampleForSample(string name)
    {
        CaseFile file = Case(name);
        Record onDesk = new(1000), simulated = new(1000);

        TargetReport report = Run(new DeskTarget(ExchangePace.Lockstep, Patient), file, onDesk);
        Run(new SimulatorTarget(), file, simulated);

        Assert.Equal(simulated.Samples.Count, onDesk.Samples.Count);
        int differs = Enumerable.Range(0, onDesk.Samples.Count).FirstOrDefault(i => !onDesk.Samples[i].Equals(simulated.Samples[i]), -1);
        Assert.True(differs < 0, differs < 0 ? "" : $"sample {differs}:\n{onDesk.Samples[differs]}\nsimulated\n{simulated.Samples[differs]}");
        Assert.Equal(onDesk.Samples.Count, report.Link!.Exchanges);
        Assert.Equal((0, 0), (report.Link.MissedDeadlines, report.Link.LostFrames));
        Assert.Empty(report.Link.StepsLate);
        Assert.Equal((CoreIdentity.Version, SettingsText.Checksum(CaseRunner.Prepare(file).Settings)), (report.CoreVersion, report.SettingsChecksum));
    }

    // The clock of a busy computer may make a step late, so only what cannot depend on it is asserted.
    [Fact]
    public void Run_InRealTime_ReachesRunningWithAnExchangeEvery10Ms()
    {
        CaseFile file = Shortened("2.5 s");
        Record record = new(1000);

        TargetReport report = Run(new DeskTarget(ExchangePace.RealTime, Patient), file, record);

        Assert.Equal(2502, record.Samples.Count);
        Assert.Contains(record.Samples, sample => sample.CloseLine);
        Assert.True(report.Link!.Exchanges + report.Link.MissedDeadlines >= 251, $"{report.Link}");
        Assert.InRange(report.Link.MedianLatencySeconds, report.Link.LeastLatencySeconds, report.Link.LargestLatencySeconds * 1.05);
        Assert.Equal(report.Link.Exchanges, report.Link.Histogram.Sum(entry => entry.Count));
        // Steps 0 to 2500; those that are more than their own length late are among the missed.
        Assert.Equal(2501, report.Link.StepsLate.Sum(entry => entry.Count));
        Assert.InRange(report.Link.StepsLate.Where(entry => entry.UpToSeconds > 0.002).Sum(entry => entry.Count), 0, report.Link.MissedDeadlines);
    }

    [Fact]
    public void Run_ThatIsCancelled_EndsWithTheCancellationAndFreesItsPort()
    {
        using CancellationTokenSource cancelled = new(TimeSpan.FromMilliseconds(300));

        Assert.ThrowsAny<OperationCanceledException>(() =>
            new DeskTarget(ExchangePace.RealTime, new TargetTiming()).Run(new TargetJob(CaseRunner.Prepare(BenchRig), BenchRig.Sha256), new Record(1000), null, cancelled.Token));
    }

    private static TargetReport Run(ITrialTarget target, CaseFile file, ISampleSink samples) =>
        target.Run(new TargetJob(CaseRunner.Prepare(file), file.Sha256), samples, null, TestContext.Current.CancellationToken);

    private static CaseFile Case(string name) => CaseFile.Read(Path.Combine(Repository.Root, "sim", "cases", name));

    // Its first start and nothing behind it.
    private static CaseFile Shortened(string duration)
    {
        string text = Repository.Text("sim/cases/bench-rig.toml");
        text = string.Join('\n', text[..text.IndexOf("[[event]]", StringComparison.Ordinal)].Split('\n').Where(line => !line.StartsWith("duration = ", StringComparison.Ordinal)));
        return CaseFile.Parse("bench-rig.toml", text.Replace("[run]", $"[run]\nduration = \"{duration}\"", StringComparison.Ordinal));
    }
}
