using System;
using System.Collections.Generic;
using System.IO;
using StarterCtl.Engine.Cases;
using StarterCtl.House;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Tests;

/// <summary>Sweeps of the bench rig, a start of 2 s and no event; and a folder for what they write.</summary>
internal sealed class RigSweep : IDisposable
{
    /// <summary>The case.</summary>
    public static readonly string CaseText = Repository.Text("sim/cases/bench-rig.toml").Split("[[event]]")[0].Replace("duration = \"6 s\"", "duration = \"2 s\"", StringComparison.Ordinal);

    private readonly string _folder = Directory.CreateTempSubdirectory("starterctl-test").FullName;

    /// <summary>A sweep of the case.</summary>
    public static SweepPlan Plan(SweepOrder order) => SweepPlan.Of(CaseFile.Parse("rig.toml", CaseText), order);

    /// <summary>Rows of a sweep.</summary>
    public static List<SweepRow> Rows(SweepPlan plan, long first, long count)
    {
        List<SweepRow> rows = [];
        SweepRunner.Run(plan, first, count, block => rows.AddRange(block.Span));
        return rows;
    }

    /// <summary>A place in the folder.</summary>
    public string Path(string name) => System.IO.Path.Combine(_folder, name + ".parquet");

    /// <summary>Writes rows as they come from the runs.</summary>
    public string Write(SweepPlan plan, string name, long first, long count, int? cores = null)
    {
        using SweepWriter writer = new(Path(name), SweepHeader.Of(plan));
        SweepRunner.Run(plan, first, count, writer.Add, cores);
        writer.Complete();
        return Path(name);
    }

    /// <summary>Writes rows that are there.</summary>
    public SweepTable Table(SweepPlan plan, string name, params SweepRow[] rows)
    {
        using (SweepWriter writer = new(Path(name), SweepHeader.Of(plan)))
        {
            writer.Add(rows);
            writer.Complete();
        }

        return SweepTable.Open(Path(name));
    }

    public void Dispose() => Directory.Delete(_folder, true);
}
