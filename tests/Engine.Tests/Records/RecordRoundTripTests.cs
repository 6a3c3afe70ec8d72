using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>What CSV and Parquet bring back is what went in, bit for bit; what is broken is read up to where it breaks.</summary>
public sealed class RecordRoundTripTests : IDisposable
{
    // As many as two flushes and a bit.
    private const int PassesBeyondTwoFlushes = 4;

    private static readonly Gen<float> AnyFloat = Gen.OneOf(Gen.Single, Gen.OneOfConst(0f, -0f, float.NaN, float.PositiveInfinity, float.NegativeInfinity, float.MaxValue, float.Epsilon, 16777217f, 0.1f));

    private readonly Folder _folder = new();

    [Theory]
    [InlineData(RecordFormat.Csv, "start.record.csv")]
    [InlineData(RecordFormat.Parquet, "start.record.parquet")]
    public void Read_AStartWithNoise_HasEveryNumberOfEverySample(RecordFormat format, string name)
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        start.Write(format, _folder[name]);

        (RecordHeader header, List<Sample> read, RecordBreak? end) = Read(_folder[name]);

        Assert.Null(end);
        Assert.Equal(start.Header, header);
        Assert.Equal(6002, read.Count);
        AssertSame(start.Samples, read);
    }

    [Theory]
    [InlineData(RecordFormat.Csv, "any.record.csv")]
    [InlineData(RecordFormat.Parquet, "any.record.parquet")]
    public void Read_AnyReadingAtAll_ComesBackBitForBit(RecordFormat format, string name) =>
        Gen.Select(AnyFloat, AnyFloat, Gen.Int, Gen.Int[0, 27], Gen.Bool).Array[1, 20].Sample(
            rows =>
            {
                Sample[] samples = [.. rows.Select((row, i) => new Sample
                {
                    TimeSeconds = i / 1000.0,
                    SupplyVolts = row.Item1,
                    ReasonQuantity = row.Item2,
                    Permissives = row.Item3,
                    Reason = (Reason)row.Item4,
                    EmergencyStop = row.Item5,
                })];
                (FullRateRecord.BenchRig with { Samples = samples }).Write(format, _folder[name]);
                AssertSame(samples, Read(_folder[name]).Samples);
            },
            iter: 40,
            threads: 1);

    [Theory]
    [InlineData(RecordFormat.Csv, "killed.record.csv", "killed.record.csv")]
    [InlineData(RecordFormat.Parquet, "killed.record.parquet", "killed.record.parts")]
    public void Read_ARunThatWasKilled_HasEverythingUpToTheLastFlush(RecordFormat format, string name, string left)
    {
        FullRateRecord start = FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes);
        start.Write(format, _folder[name], isComplete: false);

        List<Sample> read = Read(_folder[left]).Samples;

        Assert.Equal(24_008, start.Samples.Count);
        Assert.InRange(read.Count, 20_000, 24_008);
        AssertSame(start.Samples.Take(read.Count), read);
    }

    [Fact]
    public void Complete_Parquet_LeavesOneFileWithARowGroupForEachFlush()
    {
        FullRateRecord start = FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes);
        start.Write(RecordFormat.Parquet, _folder["long.record.parquet"]);

        using ParquetSharp.ParquetFileReader file = new(_folder["long.record.parquet"]);

        Assert.Equal((24_008, 3), (file.FileMetaData.NumRows, file.FileMetaData.NumRowGroups));
        Assert.False(Directory.Exists(_folder["long.record.parts"]));
        AssertSame(start.Samples, Read(_folder["long.record.parquet"]).Samples);
    }

    // Wherever it was cut, a row whose line has not ended does not count: a cut number still looks like one.
    [Fact]
    public void Read_CsvCutAnywhereInItsLastLines_HasTheWholeLinesBeforeTheCut()
    {
        FullRateRecord few = FullRateRecord.BenchRig with { Samples = [.. FullRateRecord.BenchRig.Samples.Skip(3000).Take(5)] };
        few.Write(RecordFormat.Csv, _folder["cut.record.csv"]);
        byte[] whole = File.ReadAllBytes(_folder["cut.record.csv"]);
        int names = Array.IndexOf(whole, (byte)'\n') + 1;

        for (int length = names; length <= whole.Length; length++)
        {
            File.WriteAllBytes(_folder["cut.record.csv"], whole[..length]);
            int lines = whole[..length].Count(letter => letter == '\n') - 1;

            (_, List<Sample> read, RecordBreak? end) = Read(_folder["cut.record.csv"]);

            AssertSame(few.Samples.Take(lines), read);
            if (whole[length - 1] == '\n') Assert.Null(end);
            else Assert.Equal((lines, $"line {lines + 2}"), (end!.RowsRead, end.Where));
        }
    }

    [Theory]
    [InlineData(",Running,", ",Ruining,", "phase: \"Ruining\"")]
    [InlineData(",Running,3,", ",Running,3,3,", "39 cells; allowed: 38")]
    [InlineData(",Running,3,", ",Running,x3,", "stage: \"x3\"")]
    [InlineData(",1000,0,20,", ",1000,7,20,", "stale: \"7\"")]
    [InlineData(",1000,0,20,", ",1000,0,2O,", "resistorCelsius: \"2O\"")]
    public void Read_CsvWithABrokenCell_StopsBeforeItsLineAndSaysWhere(string good, string broken, string found)
    {
        FullRateRecord.BenchRig.Write(RecordFormat.Csv, _folder["broken.record.csv"]);
        string[] lines = File.ReadAllLines(_folder["broken.record.csv"]);
        Assert.Contains(good, lines[5000], StringComparison.Ordinal);
        lines[5000] = lines[5000].Replace(good, broken, StringComparison.Ordinal);
        File.WriteAllLines(_folder["broken.record.csv"], lines);

        (_, List<Sample> read, RecordBreak? end) = Read(_folder["broken.record.csv"]);

        AssertSame(FullRateRecord.BenchRig.Samples.Take(4999), read);
        Assert.Equal(new RecordBreak(4999, "line 5001", found), end);
    }

    [Fact]
    public void Read_ParquetWithADamagedRowGroup_StopsBeforeItAndSaysWhere()
    {
        FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes).Write(RecordFormat.Parquet, _folder["damaged.record.parquet"]);
        byte[] bytes = File.ReadAllBytes(_folder["damaged.record.parquet"]);

        // Of 24 008 rows the second row group has 10 000: from 42 % to 83 % of the file.
        Array.Fill(bytes, (byte)0xFF, bytes.Length * 6 / 10, bytes.Length / 20);
        File.WriteAllBytes(_folder["damaged.record.parquet"], bytes);

        (_, List<Sample> read, RecordBreak? end) = Read(_folder["damaged.record.parquet"]);

        Assert.Equal((10_000, 10_000), (read.Count, end!.RowsRead));
        Assert.StartsWith("row group 2 is damaged", end.Found, StringComparison.Ordinal);
        Assert.StartsWith("byte ", end.Where, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(RecordFormat.Csv, "long.record.csv")]
    [InlineData(RecordFormat.Parquet, "long.record.parquet")]
    public void Read_ALongRecord_TellsHowFarItIs(RecordFormat format, string name)
    {
        FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes).Write(format, _folder[name]);
        Parts parts = new();

        using (RecordReader reader = RecordReader.Open(_folder[name])) Assert.Equal(24_008, reader.Samples(parts).Count());

        // Every 4096 rows, from the first on; a Parquet file is read by the row group.
        Assert.Equal(6, parts.Told.Count);
        Assert.Equal(parts.Told.Order(), parts.Told);
        Assert.InRange(parts.Told[0], 0, 0.01);
        Assert.InRange(parts.Told[^1], 0.6, 1);
    }

    [Fact]
    public void Read_PartsOfWhichTheLastIsCut_HasThoseBefore()
    {
        FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes).Write(RecordFormat.Parquet, _folder["parts.record.parquet"], isComplete: false);
        string last = Path.Combine(_folder["parts.record.parts"], "000002.parquet");
        File.WriteAllBytes(last, File.ReadAllBytes(last)[..5000]);

        (_, List<Sample> read, RecordBreak? end) = Read(_folder["parts.record.parts"]);

        Assert.Equal((10_000, last), (read.Count, end!.Where));
        Assert.StartsWith("5000 bytes whose end is not that of a Parquet file", end.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nowhere.csv", "no such file")]
    [InlineData("start.cfg", "a file of the kind .cfg; allowed: a record, .csv or .parquet")]
    [InlineData("alone.csv", "alone.json: found no such file; allowed: the header that was written beside the record")]
    [InlineData("other.csv", "other.csv: found no column supplyVolts, ")]
    [InlineData("empty.csv", "empty.csv: found no column timeSeconds, ")]
    [InlineData("old.csv", "old.json: formatVersion: found 99; allowed: 1")]
    [InlineData("torn.csv", "torn.json: found no header (")]
    [InlineData("text.parquet", "4 bytes whose end is not that of a Parquet file")]
    [InlineData("nothing", "a folder without Parquet files")]
    public void Open_WhatIsNoRecord_SaysWhatWasFoundAndWhatIsAllowed(string name, string message)
    {
        string header = FullRateRecord.BenchRig.Header.ToJson();
        File.WriteAllText(_folder["start.cfg"], "");
        File.WriteAllText(_folder["alone.csv"], "timeSeconds\n");
        File.WriteAllText(_folder["other.csv"], "timeSeconds,volts\n0,1\n");
        File.WriteAllText(_folder["other.json"], header);
        File.WriteAllText(_folder["empty.csv"], "");
        File.WriteAllText(_folder["empty.json"], header);
        File.WriteAllText(_folder["old.csv"], "timeSeconds\n");
        File.WriteAllText(_folder["old.json"], header.Replace("\"formatVersion\": 1", "\"formatVersion\": 99", StringComparison.Ordinal));
        File.WriteAllText(_folder["torn.csv"], "timeSeconds\n");
        File.WriteAllText(_folder["torn.json"], header[..100]);
        File.WriteAllText(_folder["text.parquet"], "text");
        Directory.CreateDirectory(_folder["nothing"]);

        RecordException error = Assert.Throws<RecordException>(() => RecordReader.Open(_folder[name]));

        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Contains("; allowed: ", error.Message, StringComparison.Ordinal);
    }

    // A disk that is full takes some bytes and then no more.
    [Theory]
    [InlineData(RecordFormat.Csv)]
    [InlineData(RecordFormat.Parquet)]
    [InlineData(RecordFormat.Comtrade)]
    [InlineData(RecordFormat.ComtradeAscii)]
    [InlineData(RecordFormat.Vcd)]
    public void Add_ToADiskThatFillsUp_FailsAndLeavesWhatIsThereReadable(RecordFormat format)
    {
        FullRateRecord start = FullRateRecord.BenchRig.Times(PassesBeyondTwoFlushes);
        FullDisk disk = new(700_000);
        string path = _folder["full.record" + Path.GetExtension(RecordFormats.FilesOf(format)[0].Suffix)];
        using RecordWriter writer = RecordFormats.Open(format, path, start.Header, disk.Create);

        Assert.Throws<IOException>(() =>
        {
            foreach (Sample sample in start.Samples) writer.Add(sample);
            writer.Complete();
        });
        writer.Dispose();

        // CSV loses the line that the disk cut, Parquet the part that it cut; the others are held to their own readers elsewhere.
        if (format == RecordFormat.Csv) AssertSame(start.Samples.Take(3500), Read(path).Samples[..3500]);
        if (format == RecordFormat.Parquet) AssertSame(start.Samples.Take(10_000), Read(ParquetRecordWriter.PartsPath(path)).Samples);
        if (format is RecordFormat.Comtrade or RecordFormat.ComtradeAscii) Assert.Contains(ComtradeFile.Read(path).SampleCount, (long[])[0, 10_000]);
        if (format == RecordFormat.Vcd) Assert.Contains("\n#1000\n", File.ReadAllText(path), StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    private static (RecordHeader Header, List<Sample> Samples, RecordBreak? Break) Read(string path)
    {
        using RecordReader reader = RecordReader.Open(path);
        List<Sample> samples = [.. reader.Samples()];
        return (reader.Header, samples, reader.Break);
    }

    private static void AssertSame(IEnumerable<Sample> expected, List<Sample> read)
    {
        Sample[] samples = [.. expected];
        Assert.Equal(samples.Length, read.Count);
        foreach (Signal signal in SignalTable.All)
        {
            for (int row = 0; row < samples.Length; row++)
            {
                double wanted = signal.Number(samples[row]), found = signal.Number(read[row]);

                // Times count in whole microseconds; the true torques of a simulation have nine digits in CSV.
                bool isSame = signal.Role == SignalRole.Time ? Math.Round(wanted * 1e6) == Math.Round(found * 1e6)
                    : signal.Kind == SignalKind.LongReal ? Math.Abs(wanted - found) <= 1e-8 * Math.Abs(wanted)
                    : BitConverter.DoubleToInt64Bits(wanted) == BitConverter.DoubleToInt64Bits(found);
                if (!isSame) Assert.Fail(string.Create(CultureInfo.InvariantCulture, $"row {row + 1}, {signal.Name}: {wanted:R} came back as {found:R}"));
            }
        }
    }

    private sealed class Parts : IProgress<double>
    {
        public List<double> Told { get; } = [];

        public void Report(double value) => Told.Add(value);
    }
}
