using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Summary;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Running;

/// <summary>Sweeps of the bench rig, a start of 2 s and no event.</summary>
public sealed class SweepRunnerTests
{
    [Fact]
    public void Run_OneCoreOrSeveral_GivesTheSameBytes()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 40, 7));

        Assert.Equal(Written(plan, 1), Written(plan, 4));
    }

    [Fact]
    public void Run_PartOfASweep_GivesTheRowsOfTheWhole()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Latin, 30, 7));

        List<SweepRow> whole = RigSweep.Rows(plan, 0, 30), part = RigSweep.Rows(plan, 11, 8);

        Assert.Equal(Enumerable.Range(11, 8).Select(row => (long)row), part.Select(row => row.Row));
        Assert.Equal(whole.Skip(11).Take(8).Select(Text), part.Select(Text));
    }

    [Fact]
    public void Run_InManyBlocks_HandsEveryRowOnInItsOrder()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 30, 7));
        List<SweepRow> rows = [];

        SweepRunner.Run(plan, 0, 30, block => rows.AddRange(block.Span), blockRows: 7, cancellation: TestContext.Current.CancellationToken);

        Assert.Equal(RigSweep.Rows(plan, 0, 30).Select(Text), rows.Select(Text));
    }

    [Fact]
    public void SeedOf_EveryRow_IsAnother()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 1000, 7)), other = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 1000, 8));

        Assert.Equal(1000, Enumerable.Range(0, 1000).Select(row => plan.SeedOf(row)).Distinct().Count());
        Assert.NotEqual(plan.SeedOf(0), other.SeedOf(0));
    }

    [Fact]
    public void Run_AnotherCountOfSobolRows_LeavesTheFirstAsTheyAre() =>
        Assert.Equal(
            RigSweep.Rows(RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 100, 7)), 0, 10).Select(Text),
            RigSweep.Rows(RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 10, 7)), 0, 10).Select(Text));

    [Fact]
    public void RowOf_ARow_RunsToTheSameResultWithARecord()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 100, 7));

        SweepRow row = SweepRunner.Run(plan, 42);
        StartStudy study = CaseRunner.Run(plan.RowOf(42), null, null, TestContext.Current.CancellationToken);

        Assert.Equal(
            (row.PeakAmps, row.PeakTorqueNewtonMetres, row.FinalRpm, row.SupplyJoules, row.IsPassed),
            (study.Result.PeakAmps, study.Result.PeakTorqueNewtonMetres, study.Result.FinalRpm, study.Result.SupplyJoules, study.Verdict.Passed));
        Assert.Equal(SettingsText.Checksum(plan.Prepared.Settings), SettingsText.Checksum(study.Settings));
        Assert.NotEmpty(study.Record.Samples);
    }

    [Fact]
    public void Run_EveryVariable_StaysBetweenItsLimits()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Corners, null, 1));
        double[] values = new double[plan.Prepared.Variables.Count];

        Assert.Equal(1024, plan.Count);
        for (long row = 0; row < plan.Count; row++)
        {
            plan.ValuesOf(row, values);
            Assert.All(values.Zip(plan.Prepared.Variables), pair => Assert.True(pair.First == pair.Second.Low || pair.First == pair.Second.High));
        }
    }

    [Fact]
    public void Run_Cancelled_EndsWithTheCancellation()
    {
        using CancellationTokenSource stop = new();
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 100_000, 7));

        Assert.ThrowsAny<OperationCanceledException>(() => SweepRunner.Run(plan, 0, plan.Count, _ => { }, null, new Stop(stop), cancellation: stop.Token));
    }

    [Fact]
    public void Summary_OfOneFileOrOfSeveral_IsTheSame()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 60, 7));
        using RigSweep files = new();
        string whole = files.Write(plan, "whole", 0, 60), first = files.Write(plan, "first", 0, 17), second = files.Write(plan, "second", 17, 43);

        SweepSummary one = SweepSummary.Of(SweepTable.Open(whole)), two = SweepSummary.Of(SweepTable.Open(second), SweepTable.Open(first));

        Assert.Equal(System.Text.Json.JsonSerializer.Serialize(one, Loose), System.Text.Json.JsonSerializer.Serialize(two, Loose));
        Assert.Equal(60, one.Failed.Of);
    }

    [Fact]
    public void Summary_OfRows_IsWhatSortingThemByHandGives()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 60, 7));
        using RigSweep files = new();
        List<SweepRow> rows = RigSweep.Rows(plan, 0, 60);

        SweepSummary summary = SweepSummary.Of(SweepTable.Open(files.Write(plan, "whole", 0, 60)));

        OutcomeSummary peak = summary.Outcomes.Single(outcome => outcome.Name == SweepColumns.Peak);
        double[] sorted = [.. rows.Select(row => row.PeakAmps).Order()];
        Assert.Equal((sorted[0], sorted[29], sorted[59]), (peak.Least, peak.Quantiles.Single(quantile => quantile.Part == 0.5).Value, peak.Most));
        Assert.Equal(rows.Count(row => !row.IsPassed), summary.Failed.Count);
        Assert.Equal(rows.MaxBy(row => row.PeakAmps)!.Row, summary.Worst[0].Row);
    }

    [Fact]
    public void Writer_File_IsReadByAnotherReader()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 12, 7));
        using RigSweep files = new();
        string path = files.Write(plan, "rows", 0, 12);

        using ParquetSharp.ParquetFileReader reader = new(path);
        using ParquetSharp.RowGroupReader group = reader.RowGroup(0);
        using ParquetSharp.LogicalColumnReader<double> volts = group.Column(2).LogicalReader<double>();

        Assert.Equal("supply.voltage [V]", reader.FileMetaData.Schema.Column(2).Name);
        Assert.Equal(RigSweep.Rows(plan, 0, 12).Select(row => row.Inputs[0]), volts.ReadAll(12));
        Assert.Contains(plan.File.Sha256, reader.FileMetaData.KeyValueMetadata[SweepHeader.Key], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SamplingMethod.Sobol, null, "no number of starts")]
    [InlineData(SamplingMethod.Sobol, 0L, "0 starts")]
    [InlineData(SamplingMethod.Factorial, null, "combinations")]
    public void Of_AnOrderThatDoesNotFit_IsRefused(SamplingMethod method, long? count, string found) =>
        Assert.Contains(found, Assert.Throws<CaseException>(() => RigSweep.Plan(new SweepOrder(method, count, 1, 10))).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_ACaseWithoutTolerances_IsRefused() =>
        Assert.Contains("a case without tolerances", Assert.Throws<CaseException>(() => SweepPlan.Of(CaseFile.Parse("rig.toml", RigSweep.CaseText.Split("[tolerances]")[0]), new SweepOrder(SamplingMethod.Sobol, 1, 1))).Message, StringComparison.Ordinal);

    private static readonly System.Text.Json.JsonSerializerOptions Loose = new() { NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals };

    private static string Text(SweepRow row) => System.Text.Json.JsonSerializer.Serialize(row, Loose);

    private static byte[] Written(SweepPlan plan, int cores)
    {
        using RigSweep files = new();
        return File.ReadAllBytes(files.Write(plan, "rows", 0, plan.Count, cores));
    }

    private sealed class Stop(CancellationTokenSource stop) : IProgress<double>
    {
        public void Report(double value) => stop.Cancel();
    }
}
