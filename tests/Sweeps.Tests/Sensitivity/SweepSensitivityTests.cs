using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Sensitivity;
using StarterCtl.Sweeps.Summary;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sensitivity;

/// <summary>What drives the start of the bench rig, of which ten quantities differ: a group has 13 rows.</summary>
public sealed class SweepSensitivityTests
{
    private const int Group = 13;

    private static readonly SweepPlan Plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sensitivity, 40 * Group, 7));

    // The short run ends before the last stage is cut out: a time of the start that differs from row to row is put in its place.
    private static readonly SweepRow[] Rows = [.. RigSweep.Rows(Plan, 0, Plan.Count).Select(row => row with { SecondsToFullSupply = row.ArmatureJoules / 100 })];

    [Fact]
    public void Of_ThePeakOfARig_IsDrivenByTheSupplyAndNotByWhatComesAfterIt()
    {
        IReadOnlyList<OutcomeSensitivity> found = Found(Rows);

        Assert.Equal([SweepColumns.Peak, SweepColumns.FullSupply, SweepColumns.Passed], found.Select(outcome => outcome.Outcome));
        Assert.Equal("supply.voltage [V]", found[0].Inputs[0].Input);
        Assert.Equal(11, found[0].Inputs.Count);
        Assert.Equal(found[0].Inputs.Select(input => input.Total.Value).OrderDescending(), found[0].Inputs.Select(input => input.Total.Value));
        // The offset of the current's sensor has no part in a start that goes by back-EMF.
        Assert.InRange(found[0].Inputs.Single(input => input.Input == "sensors.current-offset [A]").Total.Value, 0, 0.02);
        Assert.Equal(40, found[0].Points);
    }

    [Fact]
    public void Of_RowsInSeveralFilesInAnyOrder_AreTheSameToTheLastBit()
    {
        using RigSweep files = new();
        SweepTable whole = files.Table(Plan, "whole", Rows), first = files.Table(Plan, "first", Rows[..101]), second = files.Table(Plan, "second", Rows[101..]);

        Assert.Equal(Text(SweepSummary.Of(whole).Sensitivity), Text(SweepSummary.Of(second, first).Sensitivity));
    }

    [Fact]
    public void Of_StartsThatNeverGotThere_LeavesTheirPointsOutAndSaysHowMany()
    {
        // One row of the third group and two of the fifth.
        HashSet<long> never = [2 * Group, 4 * Group + 1, 4 * Group + 12];
        SweepRow[] rows = Array.ConvertAll(Rows, row => never.Contains(row.Row) ? row with { SecondsToFullSupply = double.NaN } : row);
        SweepRow[] without = [.. Rows.Where(row => row.Row / Group is not (2 or 4))];

        OutcomeSensitivity time = Found(rows)[1];

        Assert.Equal((38, 2), (time.Points, time.PointsWithoutValue));
        Assert.Equal(Text(Found(without)[1].Inputs), Text(time.Inputs));
        Assert.Equal((40, 0), (Found(rows)[0].Points, Found(rows)[0].PointsWithoutValue));
    }

    [Fact]
    public void Of_TooFewPoints_SaysNothing()
    {
        OutcomeSensitivity time = Found(Array.ConvertAll(Rows, row => row.Row >= 15 * Group ? row with { SecondsToFullSupply = double.NaN } : row))[1];

        Assert.Equal((15, 25, 0), (time.Points, time.PointsWithoutValue, time.Inputs.Count));
    }

    [Fact]
    public void Of_AnOutcomeThatDoesNotVary_HasNoInputs()
    {
        OutcomeSensitivity passed = Found(Array.ConvertAll(Rows, row => row with { IsPassed = true }))[2];

        Assert.Equal((40, 0.0, 0), (passed.Points, passed.StandardDeviation, passed.Inputs.Count));
    }

    [Fact]
    public void Of_ASweepByAnotherMethod_IsEmpty()
    {
        using RigSweep files = new();
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 5, 7));

        Assert.Empty(SweepSummary.Of(SweepTable.Open(files.Write(plan, "rows", 0, 5))).Sensitivity);
    }

    [Fact]
    public void Plan_OfFewerRowsThanSixteenGroups_IsRefused() =>
        Assert.Contains("found 207 starts; allowed: at least 208", Assert.Throws<CaseException>(() => RigSweep.Plan(new SweepOrder(SamplingMethod.Sensitivity, 207, 1))).Message, StringComparison.Ordinal);

    [Fact]
    public void Plan_RowsOfOneGroup_ShareTheirNoiseUnlessItIsTheNoiseThatDiffers() =>
        Assert.Equal([0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1], Enumerable.Range(0, Group).Select(row => Plan.SeedOf(row) == Plan.SeedOf(0) ? 0 : 1));

    private static IReadOnlyList<OutcomeSensitivity> Found(SweepRow[] rows)
    {
        using RigSweep files = new();
        return SweepSummary.Of(files.Table(Plan, "rows", rows)).Sensitivity;
    }

    private static string Text(object found) => JsonSerializer.Serialize(found);
}
