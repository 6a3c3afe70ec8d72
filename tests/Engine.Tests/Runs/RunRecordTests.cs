using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What a run leaves behind, how often, and whether it is the same each time.</summary>
public sealed class RunRecordTests
{
    private static readonly Rig PanelRig = Rigs.LineShaft with { Control = Rigs.Panel, Contactors = new Contactors(0.04, 0.015) };

    [Fact]
    public void Run_SameCaseTwiceAndInParallel_GivesIdenticalBytes()
    {
        Rig rig = PanelRig with { Load = new Load(40, 0.1, 0.002), Events = [new RunEvent(2, 60, 215, null), new RunEvent(3, null, null, OperatorCommand.Stop)] };
        (string Csv, RunResult Result) Once()
        {
            Record record = new(1000);
            RunResult result = rig.Run(record);
            using System.IO.StringWriter text = new();
            CsvRecord.Write(record, text);
            return (text.ToString(), result);
        }

        (string csv, RunResult result) = Once();
        (string Csv, RunResult Result)[] others = [Once(), .. ParallelEnumerable.Range(0, 4).WithDegreeOfParallelism(2).Select(_ => Once())];

        Assert.All(others, other =>
        {
            Assert.Equal(csv, other.Csv);
            Assert.Equal(result.Cutouts, other.Result.Cutouts);
            Assert.Equal(result.Timeline, other.Result.Timeline);
            Assert.Equal(result.SectionJoules, other.Result.SectionJoules);
            Assert.Equal(result.SupplyJoules, other.Result.SupplyJoules);
            Assert.Equal(result.PeakAmps, other.Result.PeakAmps);
        });
    }

    [Theory]
    [InlineData(1000, 1000, 1002)]
    [InlineData(10_000, 1000, 102)]
    [InlineData(500, 1000, 1002)]
    [InlineData(20_000, 20, 52)]
    public void Run_RecordPeriod_KeepsEverySoManyTicks(long recordPeriod, int controlPeriod, int samples)
    {
        Record record = new(recordPeriod);
        Rig rig = PanelRig with { Control = Rigs.Panel with { PeriodMicroseconds = controlPeriod }, DurationSeconds = 1 };

        rig.Run(record);

        // The power-up tick, then 0 to 1 s with both ends.
        Assert.Equal(samples, record.Samples.Count);
        Assert.Equal(-controlPeriod * 1e-6, record.Samples[0].TimeSeconds, 1e-12);
        double between = Math.Max(recordPeriod, controlPeriod) * 1e-6;
        for (int i = 1; i < samples; i++) Assert.Equal((i - 1) * between, record.Samples[i].TimeSeconds, 1e-9);
    }

    [Fact]
    public void Run_WithARecord_IsTheRunWithoutOne()
    {
        RunResult bare = PanelRig.Run(), recorded = PanelRig.Run(new Record(7000));

        Assert.Equal(bare.Cutouts, recorded.Cutouts);
        Assert.Equal(bare.SupplyJoules, recorded.SupplyJoules);
    }

    [Fact]
    public void Run_Progress_RisesFromZeroToBelowOne()
    {
        Collected progress = new();

        StartSimulation.Run(Setup(), PanelRig.Settings(), null, null, progress, CancellationToken.None);

        Assert.Equal(0, progress.Parts[0]);
        Assert.Equal([.. progress.Parts.Order().Distinct()], progress.Parts);
        Assert.InRange(progress.Parts[^1], 0.5, 1);
    }

    [Fact]
    public void Run_Cancelled_Ends()
    {
        using CancellationTokenSource cancellation = new();
        cancellation.Cancel();

        Assert.Throws<OperationCanceledException>(() => StartSimulation.Run(Setup(), PanelRig.Settings(), null, null, null, cancellation.Token));
    }

    private static RunSetup Setup() => new()
    {
        Machine = PanelRig.Machine,
        Load = PanelRig.Load,
        Supply = PanelRig.Supply,
        SectionOhms = [.. PanelRig.Design().Stages.Select(stage => stage.SectionOhms)],
        Contactors = PanelRig.Contactors,
        DurationSeconds = 10,
    };

    private sealed class Collected : IProgress<double>
    {
        public List<double> Parts { get; } = [];

        public void Report(double value) => Parts.Add(value);
    }
}
