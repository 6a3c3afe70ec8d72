using System;
using System.IO;
using System.Threading;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.House;
using StarterCtl.Trials.Targets;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Trials.Tests.Targets;

public sealed class SimulatorTargetTests
{
    private static readonly CaseFile BenchRig = CaseFile.Read(Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"));

    [Fact]
    public void Run_OfSixSecondsAt1Ms_GivesEveryTickAndSaysWhatItRanWith()
    {
        PreparedRun run = CaseRunner.Prepare(BenchRig);
        Record record = new(1000);

        TargetReport report = new SimulatorTarget().Run(new TargetJob(run, BenchRig.Sha256), record, null, TestContext.Current.CancellationToken);

        Assert.Equal(6002, record.Samples.Count);
        Assert.Equal(-0.001, record.Samples[0].TimeSeconds, 1e-12);
        Assert.Equal(6.0, record.Samples[^1].TimeSeconds, 1e-9);
        Assert.Equal((CoreIdentity.Version, SettingsText.Checksum(run.Settings), null), (report.CoreVersion, report.SettingsChecksum, report.Link));
    }

    [Fact]
    public void Run_ThatIsCancelled_EndsWithTheCancellation()
    {
        using CancellationTokenSource cancelled = new();
        cancelled.Cancel();

        Assert.Throws<OperationCanceledException>(() =>
            new SimulatorTarget().Run(new TargetJob(CaseRunner.Prepare(BenchRig), BenchRig.Sha256), new Record(1000), null, cancelled.Token));
    }
}
