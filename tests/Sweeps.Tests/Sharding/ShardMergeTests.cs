using System;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Sharding;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sharding;

/// <summary>Shards of a sweep of 30 rows, put together.</summary>
public sealed class ShardMergeTests : IDisposable
{
    private static readonly SweepPlan Plan = RigShards.Plan(30);
    private static readonly byte[] OneRun = InOneRun();

    private readonly RigShards _shards = new();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(30)]
    [InlineData(41)]
    public void Write_AllShards_GivesTheBytesOfOneRun(int of) => Assert.Equal(OneRun, Merged(_shards.RunAll(Plan, of)));

    [Fact]
    public void Write_InAnyOrderAndCutInSeveralWays_GivesTheBytesOfOneRun()
    {
        string half = _shards.Run(Plan, 1, 2).Path, fourth = _shards.Run(Plan, 4, 4).Path, third = _shards.Run(Plan, 3, 4).Path;

        Assert.Equal(OneRun, Merged(fourth, half, third));
    }

    [Fact]
    public void Write_OfAsManyRowsAsFillBlocks_GivesTheBytesOfOneRun()
    {
        // Two blocks and a bit, of rows that need no runs.
        SweepPlan plan = RigShards.Plan(9000);
        SweepRow row = SweepRunner.Run(plan, 0);
        string whole = Path.Combine(_shards.Folder, "whole.parquet");
        Write(whole, 0, 9000, 4096, null);
        string[] parts = [.. Enumerable.Range(1, 3).Select(number =>
        {
            string path = _shards.Files(number, 3).WholePath;
            (long first, long count) = new Shard(number, 3).RowsOf(9000);
            Write(path, first, count, 1000, new ShardSpan(number, 3, first, count, "rig.toml"));
            return path;
        })];

        Assert.Equal(File.ReadAllBytes(whole), Merged(parts));

        void Write(string path, long first, long count, int block, ShardSpan? span)
        {
            using SweepWriter writer = new(path, SweepHeader.Of(plan), span);
            for (long begin = first; begin < first + count; begin += block)
            {
                writer.Add(Enumerable.Range(0, (int)Math.Min(block, first + count - begin)).Select(i => row with { Row = begin + i, PeakAmps = Math.Sqrt(begin + i) }).ToArray());
            }

            writer.Complete();
        }
    }

    [Fact]
    public void Open_WithAShardMissing_NamesItAndItsRows()
    {
        string[] all = _shards.RunAll(Plan, 4);
        File.Delete(all[1]);
        File.Delete(all[3]);
        _shards.LeavePieces(Plan, 4, 4, 1);

        Assert.Equal(
            [$"{_shards.Folder}: found no shard 2/4 with rows 7 to 14; allowed: every row once", $"{_shards.Folder}: found no shard 4/4 with rows 22 to 29; it was begun, and goes on where its command is given again; allowed: every row once"],
            Refused(all[0], all[2]).Split('\n'));
    }

    [Fact]
    public void Open_WithMostShardsMissing_SaysHowManyMore()
    {
        string[] lines = Refused(_shards.Run(Plan, 1, 30).Path).Split('\n');

        Assert.Equal(21, lines.Length);
        Assert.Contains("found no shard 21/30 with row 20;", lines[19], StringComparison.Ordinal);
        Assert.Contains("9 more of this kind", lines[20], StringComparison.Ordinal);
    }

    [Fact]
    public void Open_CutInSeveralWaysWithRowsMissing_NamesTheRows() =>
        Assert.Equal($"{_shards.Folder}: found no rows 15 to 21; allowed: every row once", Refused(_shards.Run(Plan, 1, 2).Path, _shards.Run(Plan, 4, 4).Path));

    [Fact]
    public void Open_WithRowsTwice_NamesBothFiles()
    {
        string first = _shards.Run(Plan, 1, 2).Path, second = _shards.Run(Plan, 2, 2).Path, again = _shards.Run(Plan, 2, 3).Path;

        Assert.Equal(
            [$"{again}: found rows 10 to 14, which {first} has too; allowed: every row once", $"{second}: found rows 15 to 19, which {again} has too; allowed: every row once"],
            Refused(first, second, again).Split('\n'));
    }

    [Fact]
    public void Open_OneShardUnderTwoNames_IsRefused()
    {
        string path = _shards.Run(Plan, 1, 1).Path;
        string copy = _shards.Files(2, 9).WholePath;
        File.Copy(path, copy);

        Assert.Contains("found rows 0 to 29, which", Refused(path, copy), StringComparison.Ordinal);
    }

    [Fact]
    public void Open_ShardsOfAnotherSeed_AreRefused()
    {
        string first = _shards.Run(Plan, 1, 2).Path, second = _shards.Run(RigShards.Plan(30, seed: 8), 2, 2).Path;

        Assert.Equal($"{second}: found rows of another sweep than in {first}: seed 8 instead of 7; allowed: shards of one sweep", Refused(first, second));
    }

    [Fact]
    public void Open_ShardsOfAnotherCase_AreRefused()
    {
        SweepPlan other = SweepPlan.Of(CaseFile.Parse("rig.toml", RigSweep.CaseText + "\n# changed\n"), Plan.Order);

        Assert.Contains("found rows of another sweep than in", Refused(_shards.Run(Plan, 1, 2).Path, _shards.Run(other, 2, 2).Path), StringComparison.Ordinal);
    }

    [Fact]
    public void Open_AHalfFile_IsRefused()
    {
        string[] all = _shards.RunAll(Plan, 2);
        File.WriteAllBytes(all[1], File.ReadAllBytes(all[1])[..^500]);

        Assert.StartsWith($"{all[1]}: found a file that is no whole Parquet file", Refused(all), StringComparison.Ordinal);
    }

    [Fact]
    public void Open_ThePieceOfAShard_IsRefused() =>
        Assert.Contains("found a part of a shard; allowed: the whole results of a shard", Refused(_shards.LeavePieces(Plan, 1, 1, 1)), StringComparison.Ordinal);

    [Fact]
    public void Open_TheResultsOfOneRun_AreRefused()
    {
        string path = Path.Combine(_shards.Folder, "rig.sweep.parquet");
        File.WriteAllBytes(path, OneRun);

        Assert.Contains("found the whole results of a sweep; allowed: files of its shards", Refused(path), StringComparison.Ordinal);
    }

    [Fact]
    public void Blocks_OfAFile_AreTheRowsThatWereWritten()
    {
        // Values that no start gives: every bit must come back.
        SweepRow row = SweepRunner.Run(Plan, 3) with { FirstFault = "speed \u00fc", SecondsToSpeed = BitConverter.Int64BitsToDouble(0x7FF8_0000_0000_0123), HottestSectionCelsius = -0.0 };
        using RigSweep files = new();

        SweepRow back = Assert.Single(files.Table(Plan, "rows", row).Blocks().Single());

        Assert.Equal(Bits(row), Bits(back));
    }

    public void Dispose() => _shards.Dispose();

    private static string Refused(params string[] paths) => Assert.Throws<SweepException>(() => ShardMerge.Open(paths)).Message;

    private byte[] Merged(params string[] paths)
    {
        string path = Path.Combine(_shards.Folder, "merged");
        ShardMerge.Open(paths).Write(path);
        return File.ReadAllBytes(path);
    }

    private static byte[] InOneRun()
    {
        using RigSweep files = new();
        return File.ReadAllBytes(files.Write(RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 30, 7)), "whole", 0, 30));
    }

    private static string Bits(SweepRow row) =>
        string.Join(' ', typeof(SweepRow).GetProperties().OrderBy(property => property.Name, StringComparer.Ordinal).Select(property => property.GetValue(row) switch
        {
            double value => BitConverter.DoubleToInt64Bits(value).ToString("x", null),
            System.Collections.Generic.IReadOnlyList<double> values => string.Join(',', values.Select(value => BitConverter.DoubleToInt64Bits(value).ToString("x", null))),
            object other => other.ToString(),
            null => "",
        }));
}
