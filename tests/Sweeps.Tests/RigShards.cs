using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Sharding;

namespace StarterCtl.Sweeps.Tests;

/// <summary>Shards of sweeps of the bench rig in a folder of their own, in pieces of four rows.</summary>
internal sealed class RigShards : IDisposable
{
    public const int PieceRows = 4;

    /// <summary>The folder.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("starterctl-test").FullName;

    /// <summary>What was said on the way.</summary>
    public List<string> Said { get; } = [];

    /// <summary>A sweep.</summary>
    public static SweepPlan Plan(long count, int seed = 7) => RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, count, seed));

    /// <summary>The files of a shard.</summary>
    public ShardFiles Files(int number, int of) => new(Folder, "rig", new Shard(number, of));

    /// <summary>Makes a shard whole.</summary>
    public ShardResult Run(SweepPlan plan, int number, int of, int pieceRows = PieceRows) => new ShardRun(plan, Files(number, of), Said.Add, pieceRows).Run();

    /// <summary>Makes all shards whole; gives their files.</summary>
    public string[] RunAll(SweepPlan plan, int of) => [.. Enumerable.Range(1, of).Select(number => Run(plan, number, of).Path)];

    /// <summary>Leaves what a shard leaves that was ended when it had some pieces.</summary>
    /// <returns>The pieces.</returns>
    public string[] LeavePieces(SweepPlan plan, int number, int of, int pieces)
    {
        ShardFiles files = Files(number, of);
        Directory.CreateDirectory(files.PiecesFolder);
        SweepRunner.Run(plan, files.Shard.RowsOf(plan.Count).First, (long)pieces * PieceRows, rows => Piece(plan, files, rows), blockRows: PieceRows);
        return [.. Directory.GetFiles(files.PiecesFolder).Order(StringComparer.Ordinal)];
    }

    public void Dispose() => Directory.Delete(Folder, true);

    private static void Piece(SweepPlan plan, ShardFiles files, ReadOnlyMemory<SweepRow> rows)
    {
        long first = rows.Span[0].Row;
        using SweepWriter writer = new(files.PieceOf(first), SweepHeader.Of(plan), new ShardSpan(files.Shard.Number, files.Shard.Of, first, rows.Length, plan.File.FileName));
        writer.Add(rows);
        writer.Complete();
    }
}
