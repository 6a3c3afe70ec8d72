using System;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sharding;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sharding;

/// <summary>A shard, ended and started again: rows 14 to 28 of 30, in four pieces.</summary>
public sealed class ShardRunTests : IDisposable
{
    private static readonly SweepPlan Plan = RigShards.Plan(29);
    private static readonly byte[] Uninterrupted = InOneGo();

    private readonly RigShards _shards = new();

    private ShardFiles Files => _shards.Files(2, 2);

    [Fact]
    public void Run_FromNothing_ComputesEveryRowAndLeavesOneFile()
    {
        ShardResult result = _shards.Run(Plan, 2, 2);

        Assert.Equal((14, 15, 0, 15, false), (result.Span.FirstRow, result.Span.RowCount, result.KeptRows, result.ComputedRows, result.WasWhole));
        Assert.Equal(["rig.sweep.2-of-2.parquet"], Directory.GetFileSystemEntries(_shards.Folder).Select(Path.GetFileName));
        Assert.Equal(Enumerable.Range(14, 15).Select(row => (long)row), SweepTable.Open(result.Path).Rows());
    }

    [Fact]
    public void Run_OfAWholeShard_DoesNothing()
    {
        string path = _shards.Run(Plan, 2, 2).Path;
        DateTime written = File.GetLastWriteTimeUtc(path);

        ShardResult again = _shards.Run(Plan, 2, 2);

        Assert.Equal((15, 0, true), (again.KeptRows, again.ComputedRows, again.WasWhole));
        Assert.Equal(written, File.GetLastWriteTimeUtc(path));
        Assert.Equal(Uninterrupted, File.ReadAllBytes(path));
        Assert.Empty(_shards.Said);
    }

    [Theory]
    [InlineData(1, 4)]
    [InlineData(3, 12)]
    public void Run_BehindSomePieces_ComputesOnlyTheRest(int pieces, int kept)
    {
        _shards.LeavePieces(Plan, 2, 2, pieces);

        Becomes(kept);
        Assert.Empty(_shards.Said);
    }

    [Fact]
    public void Run_WithAHoleBetweenPieces_ComputesTheHole()
    {
        File.Delete(_shards.LeavePieces(Plan, 2, 2, 3)[1]);

        Becomes(8);
    }

    [Fact]
    public void Run_BehindAHalfPiece_DiscardsItAndSaysSo()
    {
        string[] pieces = _shards.LeavePieces(Plan, 2, 2, 2);
        string half = Files.BesideOf(pieces[1]);
        File.WriteAllBytes(half, File.ReadAllBytes(pieces[1])[..^100]);
        File.Delete(pieces[1]);

        Becomes(4);
        Assert.Equal([$"discarded: {half}: half-written by a process that was ended"], _shards.Said);
    }

    [Fact]
    public void Run_BehindAHalfWholeFile_DiscardsItAndComputesNothingTwice()
    {
        _shards.LeavePieces(Plan, 2, 2, 3);
        File.WriteAllBytes(Files.BesideOf(Files.WholePath), Uninterrupted[..1000]);

        Becomes(12);
        Assert.Contains("rig.sweep.2-of-2.partial.parquet: half-written", Assert.Single(_shards.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_BehindAPieceWithAChangedByte_ComputesItAgainAndSaysSo()
    {
        string[] pieces = _shards.LeavePieces(Plan, 2, 2, 3);
        byte[] bytes = File.ReadAllBytes(pieces[1]);
        bytes[200] ^= 1;
        File.WriteAllBytes(pieces[1], bytes);

        Becomes(8);
        Assert.StartsWith($"discarded: {pieces[1]}: found a file that is not as it was written", Assert.Single(_shards.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_BehindAPieceUnderTheNameOfAnother_ComputesItAgain()
    {
        string[] pieces = _shards.LeavePieces(Plan, 2, 2, 2);
        File.Copy(pieces[0], pieces[1], true);

        Becomes(4);
        Assert.EndsWith("other rows than its name says", Assert.Single(_shards.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_OfAWholeShardThatWasCut_ComputesItAgainAndSaysSo()
    {
        File.WriteAllBytes(Files.WholePath, Uninterrupted[..^1]);

        Becomes(0);
        Assert.StartsWith($"discarded: {Files.WholePath}: found a file that is no whole Parquet file", Assert.Single(_shards.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_KilledBeforeItCouldTidyUp_IsTidiedUpByTheNext()
    {
        _shards.LeavePieces(Plan, 2, 2, 3);
        File.WriteAllBytes(Files.WholePath, Uninterrupted);

        Assert.True(_shards.Run(Plan, 2, 2).WasWhole);
        Assert.False(Directory.Exists(Files.PiecesFolder));
    }

    [Fact]
    public void Run_Cancelled_KeepsWholePiecesForTheNext()
    {
        using CancellationTokenSource stop = new();
        ShardRun run = new(RigShards.Plan(100_000), _shards.Files(1, 1), _shards.Said.Add, RigShards.PieceRows);

        Assert.ThrowsAny<OperationCanceledException>(() => run.Run(new After(stop, 100 / 100_000.0), stop.Token));

        int pieces = Directory.GetFiles(_shards.Files(1, 1).PiecesFolder, "*.parquet").Count(path => !ShardFiles.IsHalf(path));
        Assert.InRange(pieces, 1, 1000);
        Assert.Equal(RigShards.PieceRows * pieces, run.RowsKept);
    }

    [Fact]
    public void Run_WhereAnotherProcessHoldsTheShard_IsRefusedAndLeavesItsFilesAlone()
    {
        string[] pieces = _shards.LeavePieces(Plan, 2, 2, 2);
        string half = Files.BesideOf(pieces[1]);
        File.WriteAllText(half, "of the other process");
        using FileStream held = new(Files.LockPath, FileMode.Create, FileAccess.ReadWrite, FileShare.None);

        Assert.Equal("another process computes this shard", Assert.Throws<ShardBusyException>(() => _shards.Run(Plan, 2, 2)).Message);
        Assert.True(File.Exists(half));
    }

    [Fact]
    public void Run_WhileAnotherRunGoesOn_IsRefusedAndTheOtherEndsAsIfNothingHadBeen()
    {
        Exception? second = null;
        ShardRun first = new(Plan, Files, _shards.Said.Add, RigShards.PieceRows);

        ShardResult result = first.Run(new Meanwhile(() => second ??= Record.Exception(() => { _shards.Run(Plan, 2, 2); })), TestContext.Current.CancellationToken);

        Assert.IsType<ShardBusyException>(second);
        Assert.Equal(15, result.ComputedRows);
        Assert.Equal(Uninterrupted, File.ReadAllBytes(result.Path));
    }

    [Fact]
    public void Run_BehindPiecesOfAnotherSweep_IsRefusedAndLeavesThem()
    {
        string[] pieces = _shards.LeavePieces(RigShards.Plan(29, seed: 8), 2, 2, 2);

        string said = Assert.Throws<SweepException>(() => _shards.Run(Plan, 2, 2)).Message;
        Assert.Equal($"{pieces[0]}: found rows of another sweep: seed 8 instead of 7; allowed: another --out, or a folder without this file", said);
        Assert.All(pieces, piece => Assert.True(File.Exists(piece)));
    }

    [Fact]
    public void Run_WhereTheShardOfAnotherSweepIs_IsRefusedAndLeavesIt()
    {
        _shards.Run(RigShards.Plan(30), 2, 2);
        byte[] before = File.ReadAllBytes(Files.WholePath);

        Assert.Contains("found rows of another sweep: starts 30 instead of 29", Assert.Throws<SweepException>(() => _shards.Run(Plan, 2, 2)).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Files.WholePath));
    }

    [Fact]
    public void Run_InPiecesOfAnotherLength_GivesTheSameBytes() => Assert.Equal(Uninterrupted, File.ReadAllBytes(_shards.Run(Plan, 2, 2, 1000).Path));

    public void Dispose() => _shards.Dispose();

    // Every row is computed once over both runs, and the end is that of one.
    private void Becomes(int kept)
    {
        ShardResult result = _shards.Run(Plan, 2, 2);
        Assert.Equal((kept, 15 - kept, false), (result.KeptRows, result.ComputedRows, result.WasWhole));
        Assert.Equal(Uninterrupted, File.ReadAllBytes(result.Path));
        Assert.False(Directory.Exists(Files.PiecesFolder));
    }

    private static byte[] InOneGo()
    {
        using RigShards shards = new();
        return File.ReadAllBytes(shards.Run(Plan, 2, 2).Path);
    }

    private sealed class Meanwhile(Action act) : IProgress<double>
    {
        public void Report(double value) => act();
    }

    private sealed class After(CancellationTokenSource stop, double part) : IProgress<double>
    {
        public void Report(double value)
        {
            if (value >= part) stop.Cancel();
        }
    }
}
