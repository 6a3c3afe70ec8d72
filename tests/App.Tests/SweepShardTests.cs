using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Shards of a sweep, killed and started again, and the merge of them.</summary>
public sealed class SweepShardTests : IDisposable
{
    private const int PieceRows = 1024;

    private readonly Cli _cli = new();

    private static string CasePath => Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml");

    private string ShardFolder => Path.Combine(_cli.Folder, "shards");

    private string PiecesFolder => Path.Combine(ShardFolder, "rig.sweep.2-of-2.pieces");

    [Theory]
    [InlineData("--count 50 --seed 7", 3)]
    [InlineData("--count 2 --seed 7", 5)]
    [InlineData("--count 30 --seed 7 --method latin", 4)]
    [InlineData("--count 40 --method corners", 3)]
    [InlineData("--count 40 --method factorial --levels 4", 2)]
    // Groups of 13 rows, of which shards hold parts; the count is rounded down to whole groups.
    [InlineData("--count 215 --method sensitivity", 5)]
    public async Task Merge_OfAllShards_WritesAndSaysWhatOneRunDoes(string sweep, int of)
    {
        string[] options = sweep.Split(' ');
        string merged = Path.Combine(_cli.Folder, "merged");
        int oneCode = await _cli.Run(["sweep", CasePath, .. options, "--out", _cli.OutFolder]);
        string oneRun = _cli.Output;
        for (int number = of; number >= 1; number--) Assert.Equal(0, await _cli.Run(["sweep", CasePath, .. options, "--out", ShardFolder, "--shard", $"{number}/{of}"]));

        int code = await _cli.Run("sweep", "merge", ShardFolder, "--out", merged);

        Assert.Equal((oneCode, oneRun), (code, _cli.Output));
        foreach (string name in (string[])["bench-rig.sweep.parquet", "bench-rig.sweep.json"])
        {
            Assert.Equal(await Bytes(_cli.OutFolder, name), await Bytes(merged, name));
        }
    }

    [Fact]
    public async Task Merge_WithAllThatMayPass_EndsWellAndGivesTheSummaryAsJson()
    {
        await _cli.Run("sweep", CasePath, "--count", "10", "--shard", "1/1", "--out", ShardFolder);

        Assert.Equal(0, await _cli.Run("sweep", "merge", Path.Combine(ShardFolder, "bench-rig.sweep.1-of-1.parquet"), "--allow", "1", "--json", "--out", _cli.OutFolder));
        Assert.Equal(10, _cli.Json().GetProperty("sweep").GetProperty("count").GetInt32());
    }

    [Fact]
    public async Task Merge_WithoutAllShards_NamesTheOthersAndWritesNothing()
    {
        await _cli.Run("sweep", CasePath, "--count", "10", "--shard", "2/3", "--out", ShardFolder);

        Assert.Equal(2, await _cli.Run("sweep", "merge", ShardFolder, "--out", _cli.OutFolder));
        Assert.Equal($"error: {ShardFolder}: found no shard 1/3 with rows 0 to 2; allowed: every row once\nerror: {ShardFolder}: found no shard 3/3 with rows 6 to 9; allowed: every row once\n", _cli.Errors);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    [Fact]
    public async Task Merge_OntoAShard_IsRefused()
    {
        await _cli.Run("sweep", CasePath, "--count", "10", "--shard", "1/1", "--out", ShardFolder);
        string path = Path.Combine(ShardFolder, "bench-rig.sweep.1-of-1.parquet");

        Assert.Equal(2, await _cli.Run("sweep", "merge", ShardFolder, "--out", path));
        Assert.Contains($"{path}: cannot be written: it is what is read", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Merge_OfAFolderWithoutShards_SaysWhatIsWanted()
    {
        Assert.Equal(2, await _cli.Run("sweep", "merge", _cli.Folder));
        Assert.Equal($"error: {_cli.Folder}: found a folder without shards; allowed: files of shards, CASE.sweep.I-of-N.parquet, or a folder of them\n", _cli.Errors);
    }

    [Fact]
    public async Task Shard_RunAgain_SaysThatItIsWholeAndDoesNothing()
    {
        string[] call = ["sweep", CasePath, "--count", "10", "--shard", "2/3", "--out", ShardFolder];
        await _cli.Run(call);
        Assert.Equal("bench-rig.toml, shard 2/3: rows 3 to 5 of 10\n0 rows were there, 3 computed.\n", _cli.Output);

        Assert.Equal(0, await _cli.Run(call));
        Assert.Equal("bench-rig.toml, shard 2/3: rows 3 to 5 of 10\n3 rows were there, 0 computed.\n", _cli.Output);
        Assert.Equal($"nothing to do, the shard is whole: {Path.Combine(ShardFolder, "bench-rig.sweep.2-of-3.parquet")}\n", _cli.Errors);
    }

    [Fact]
    public async Task Shard_KilledAtSeveralMoments_ComputesNoPieceTwiceAndEndsAsIfNothingHadBeen()
    {
        string[] call = ["sweep", WriteRig(), "--count", "16384", "--shard", "2/2", "--json", "--out"];
        await _cli.Run([.. call, _cli.OutFolder]);
        Dictionary<string, DateTime> before = [];
        foreach (int pieces in (int[])[0, 1, 3, 6])
        {
            using RunningProgram running = RunningProgram.Start([.. call, ShardFolder]);
            await running.Until(() => Directory.Exists(PiecesFolder) && Pieces().Count >= pieces);
            running.Kill();

            Dictionary<string, DateTime> left = Pieces();
            Assert.All(before, piece => Assert.Equal(piece.Value, left[piece.Key]));
            before = left;
        }

        using RunningProgram last = RunningProgram.Start([.. call, ShardFolder]);
        Assert.Equal(0, await last.ExitCode());

        JsonElement shard = JsonDocument.Parse(last.Output).RootElement;
        Assert.Equal((PieceRows * before.Count, 8192 - PieceRows * before.Count), (shard.GetProperty("keptRows").GetInt32(), shard.GetProperty("computedRows").GetInt32()));
        Assert.InRange(before.Count, 6, 8);
        Assert.Equal(["rig.sweep.2-of-2.parquet"], Directory.GetFileSystemEntries(ShardFolder).Select(Path.GetFileName));
        Assert.Equal(await Bytes(_cli.OutFolder, "rig.sweep.2-of-2.parquet"), await Bytes(ShardFolder, "rig.sweep.2-of-2.parquet"));
    }

    [Fact]
    public async Task Shard_InTwoProcessesAtOnce_IsRefusedToTheSecondAndCtrlCKeepsWhatTheFirstHas()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "sends a POSIX signal");
        string[] call = ["sweep", WriteRig(), "--count", "2000000", "--shard", "2/2", "--out", ShardFolder];
        using RunningProgram first = RunningProgram.Start(call);
        await first.Until(() => Directory.Exists(PiecesFolder) && Pieces().Count > 0);

        Assert.Equal(4, await _cli.Run(call));
        Assert.Contains("rig.sweep.2-of-2.parquet: cannot be written: another process computes this shard", _cli.Errors, StringComparison.Ordinal);

        await first.Interrupt();
        Assert.Equal(5, await first.ExitCode());
        Assert.Contains($"warning: {PieceRows * Pieces().Count} rows are kept; the same command goes on from there", first.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SweepsPage_BlocksOfShards_AreWhatTheProgramPrints()
    {
        string page = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "sim", "sweeps.md"), TestContext.Current.CancellationToken);
        foreach (int number in (int[])[1, 4, 2])
        {
            await _cli.Run("sweep", CasePath, "--count", "500", "--seed", "7", "--shard", $"{number}/4", "--out", ShardFolder);
        }

        Assert.Contains($"\n```\n{_cli.Output}{_cli.Errors.Replace(ShardFolder, "out", StringComparison.Ordinal)}```\n", page, StringComparison.Ordinal);
        await _cli.Run("sweep", "merge", ShardFolder, "--out", _cli.OutFolder);
        Assert.Contains($"\n```\n{_cli.Errors.Replace(ShardFolder, "out", StringComparison.Ordinal)}```\n", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--shard 0/4", "--shard: found \"0/4\"; allowed: I/N with I from 1 to N and N up to 1000000, auto, or auto/N")]
    [InlineData("--shard 1/2 --allow 1", "--allow: found it with --shard; allowed: --allow with sweep merge, which knows all starts")]
    [InlineData("--shard 1/2 --out rows.parquet", "rows.parquet: cannot be written: a shard's file has a name of its own; allowed: --out with a folder or a file that may be written")]
    public async Task Shard_WithAWrongOption_SaysWhatIsAllowed(string call, string said)
    {
        Assert.Equal(2, await _cli.Run(["sweep", CasePath, "--count", "10", .. call.Split(' ')]));
        Assert.Contains(said, _cli.Errors, StringComparison.Ordinal);
    }

    public void Dispose() => _cli.Dispose();

    private static Task<byte[]> Bytes(string folder, string name) => File.ReadAllBytesAsync(Path.Combine(folder, name), TestContext.Current.CancellationToken);

    // Starts of 2 s without an event.
    private string WriteRig() =>
        _cli.Write("rig.toml", File.ReadAllText(CasePath).Split("[[event]]")[0].Replace("duration = \"6 s\"", "duration = \"2 s\"", StringComparison.Ordinal));

    // Whole ones, with the times at which they were written.
    private Dictionary<string, DateTime> Pieces() =>
        Directory.GetFiles(PiecesFolder, "*.parquet").Where(path => !path.Contains("partial", StringComparison.Ordinal)).ToDictionary(path => path, File.GetLastWriteTimeUtc);
}
