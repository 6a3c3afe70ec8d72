using System;
using System.Collections.Generic;
using System.IO;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Results;

/// <summary>A file of results that is not what was written is refused with its name, what was found and what would do, and never gives other rows.</summary>
public sealed class DamagedResultsTests : IDisposable
{
    private static readonly byte[] Whole = WholeFile();

    private readonly RigSweep _files = new();

    [Fact]
    public void Open_AFileCutAnywhere_IsRefused()
    {
        string path = Written(Whole);
        using FileStream file = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        for (int length = Whole.Length - 1; length >= 0; length--)
        {
            file.SetLength(length);
            Refused(path);
        }
    }

    [Fact]
    public void Open_AnyByteChanged_IsRefused()
    {
        string path = Written(Whole);
        using FileStream file = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, 0);
        for (int at = 0; at < Whole.Length; at++)
        {
            Put((byte)(Whole[at] ^ (1 << (at % 8))));
            Refused(path);
            Put(Whole[at]);

            void Put(byte value)
            {
                file.Position = at;
                file.WriteByte(value);
            }
        }

        Assert.Equal(12, SweepTable.Open(path).RowCount);
    }

    [Fact]
    public void Open_ARowGroupOfAnotherFile_IsRefused() => Refused([.. Whole[..100], .. Whole]);

    [Fact]
    public void Open_BytesBehindTheEnd_IsRefused() => Refused([.. Whole, 0]);

    [Fact]
    public void Open_AnEmptyFile_SaysSo() => Assert.Contains("found an empty file; allowed: the whole results of a sweep", Refused([]), StringComparison.Ordinal);

    [Fact]
    public void Open_NoFile_NamesIt() => Assert.StartsWith(_files.Path("none") + ": found a file that cannot be read", Assert.Throws<SweepException>(() => SweepTable.Open(_files.Path("none"))).Message, StringComparison.Ordinal);

    [Fact]
    public void Open_SomethingElse_SaysThatItIsNoParquetFile() => Assert.Contains("found a file that is no whole Parquet file", Refused("title = \"Bench rig\"\n"u8.ToArray()), StringComparison.Ordinal);

    [Fact]
    public async Task Open_AParquetFileOfAnother_MissesTheCheck() =>
        Assert.Contains("found a Parquet file without starterctl.sweep.check in its metadata; allowed: the whole results of a sweep", Refused(await Other([])), StringComparison.Ordinal);

    [Fact]
    public async Task Open_AHeaderWithoutTheCheck_IsRefused()
    {
        string header = SweepHeader.Of(RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 1, 7))).ToJson();

        Assert.Contains("found a Parquet file without starterctl.sweep.check in its metadata", Refused(await Other(new() { [SweepHeader.Key] = header })), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "a header that cannot be read")]
    [InlineData("[]", "a header that cannot be read")]
    [InlineData("{\"formatVersion\": 1}", "a header that cannot be read")]
    [InlineData("null", "a Parquet file without starterctl.sweep")]
    public void Header_ThatIsNone_IsRefused(string json, string found) =>
        Assert.StartsWith($"rows.parquet: found {found}", Assert.Throws<SweepException>(() => SweepHeader.Read("rows.parquet", json)).Message, StringComparison.Ordinal);

    [Fact]
    public void Header_OfALaterFormat_NamesBoth()
    {
        SweepHeader later = SweepHeader.Of(RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 1, 7))) with { FormatVersion = 2 };

        Assert.Equal("rows.parquet: found results of format 2; allowed: format 1, which this program reads", Assert.Throws<SweepException>(() => SweepHeader.Read("rows.parquet", later.ToJson())).Message);
    }

    [Fact]
    public void Numbers_OfAColumnThatIsNotThere_NamesIt()
    {
        SweepTable table = SweepTable.Open(Written(Whole));

        Assert.Contains("found no column \"section-3-energy [J]\"; allowed: the results of a sweep", Assert.Throws<SweepException>(() => table.Numbers(SweepColumns.Section(3))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_OfAColumnOfWords_IsRefused() => Assert.Throws<SweepException>(() => SweepTable.Open(Written(Whole)).Numbers(SweepColumns.Phase));

    public void Dispose() => _files.Dispose();

    private string Refused(byte[] bytes) => Refused(Written(bytes));

    private static string Refused(string path)
    {
        SweepException refused = Assert.Throws<SweepException>(() => SweepTable.Open(path));
        Assert.StartsWith(path + ": found ", refused.Message, StringComparison.Ordinal);
        Assert.Contains("; allowed: ", refused.Message, StringComparison.Ordinal);
        return refused.Message;
    }

    private string Written(byte[] bytes)
    {
        string path = _files.Path("damaged");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static byte[] WholeFile()
    {
        SweepPlan plan = RigSweep.Plan(new SweepOrder(SamplingMethod.Sobol, 12, 7));
        using RigSweep files = new();
        using (SweepWriter writer = new(files.Path("whole"), SweepHeader.Of(plan)))
        {
            SweepRunner.Run(plan, 0, plan.Count, writer.Add, blockRows: 8);
            writer.Complete();
        }

        return File.ReadAllBytes(files.Path("whole"));
    }

    // A Parquet file with one column of one number.
    private static async Task<byte[]> Other(Dictionary<string, string> metadata)
    {
        DataField field = new(SweepColumns.Row, typeof(long), false);
        using MemoryStream stream = new();
        ParquetWriter writer = await ParquetWriter.CreateAsync(new ParquetSchema(field), stream);
        await using (writer)
        {
            writer.CustomMetadata = metadata;
            using ParquetRowGroupWriter group = writer.CreateRowGroup();
            await group.WriteAsync<long>(field, new long[] { 0 });
        }

        return stream.ToArray();
    }
}
