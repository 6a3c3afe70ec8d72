using System;
using System.IO;
using System.Linq;
using ParquetSharp;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>What stands at the beginning of a record, and that every format says the same.</summary>
public sealed class RecordHeaderTests : IDisposable
{
    private readonly Folder _folder = new();

    [Fact]
    public void Header_OfACase_SaysWhatAReplayNeeds()
    {
        CaseFile file = CaseFile.Parse("rigs/bench-rig.toml", ShippedCase.Text("bench-rig") + FullRateRecord.NoiseOf(11));
        PreparedRun prepared = CaseRunner.Prepare(file);

        RecordHeader header = RecordHeader.Of(file, prepared.Setup, prepared.Settings, 5000);

        Assert.Equal((1, "bench-rig.toml", file.Sha256, 11, 1000, 5000), (header.FormatVersion, header.Case, header.CaseSha256, header.SensorSeed, header.ControlPeriodMicroseconds, header.RecordPeriodMicroseconds));
        Assert.Equal((CoreIdentity.Version, "0.1.0"), (header.CoreVersion, header.ProgramVersion));
        Assert.Equal(SettingsChecksum.Of(prepared.Settings), SettingsChecksum.Of(SettingsText.Read(header.Settings)));
    }

    [Fact]
    public void Header_InEveryFormat_SaysTheSame()
    {
        // A dollar sign would end a comment of VCD.
        FullRateRecord start = FullRateRecord.BenchRig with { Header = FullRateRecord.BenchRig.Header with { Case = "my $end.toml" } };
        foreach (RecordFormat format in Enum.GetValues<RecordFormat>()) start.Write(format, _folder[RecordFormats.FilesOf(format)[0].Suffix]);

        string vcd = File.ReadAllText(_folder["record.vcd"]);
        string comment = vcd[(vcd.IndexOf("$comment", StringComparison.Ordinal) + 8)..];
        using ParquetFileReader parquet = new(_folder["record.parquet"]);
        string[] texts =
        [
            File.ReadAllText(_folder["record.json"]),
            parquet.FileMetaData.KeyValueMetadata["starterctl.header"],
            comment[..comment.IndexOf("$end", StringComparison.Ordinal)],
            File.ReadAllText(_folder["record.hdr"]).Split("\n\n")[0],
            File.ReadAllText(_folder["record-ascii.hdr"]).Split("\n\n")[0],
        ];

        Assert.All(texts, text => Assert.Equal(start.Header, RecordHeader.Read("here", text)));
        Assert.Contains("fault: 0 None, 1 EmergencyStop, ", File.ReadAllText(_folder["record.hdr"]), StringComparison.Ordinal);
    }

    // Another library, that of Apache Arrow, finds the columns of the table with their types and the numbers of every sample.
    [Fact]
    public void Parquet_ReadByAnotherLibrary_HasTheTableAsColumns()
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        start.Write(RecordFormat.Parquet, _folder["start.record.parquet"]);

        using ParquetFileReader file = new(_folder["start.record.parquet"]);
        using RowGroupReader group = file.RowGroup(0);

        Assert.Equal(SignalTable.All.Select(signal => signal.Name), Enumerable.Range(0, file.FileMetaData.NumColumns).Select(i => file.FileMetaData.Schema.Column(i).Name));
        Assert.Equal(start.Samples.Select(sample => sample.TimeSeconds), Column<double>(group, "timeSeconds"));
        Assert.Equal(start.Samples.Select(sample => sample.ArmatureAmps), Column<float>(group, "armatureAmps"));
        Assert.Equal(start.Samples.Select(sample => sample.ResistiveBackEmfVolts), Column<float>(group, "resistiveBackEmfVolts"));
        Assert.Equal(start.Samples.Select(sample => sample.StagesClosed), Column<int>(group, "stagesClosed"));
        Assert.Equal(start.Samples.Select(sample => sample.CloseLine), Column<bool>(group, "closeLine"));
        Assert.Equal(start.Samples.Select(sample => sample.Reason.ToString()), Column<string>(group, "reason"));
    }

    [Fact]
    public void Fan_TwoPeriods_HandsEachItsOwnSamples()
    {
        StarterCtl.Engine.Records.Record fine = new(2000), coarse = new(5000);
        SampleFan fan = new(fine, coarse);
        Assert.Equal(1000, fan.PeriodMicroseconds);

        for (int i = -1; i <= 10; i++) fan.Add(new Sample { TimeSeconds = i });

        // -1 is the controller's power-up, before the case begins.
        Assert.Equal([-1, 0, 2, 4, 6, 8, 10], fine.Samples.Select(sample => sample.TimeSeconds));
        Assert.Equal([-1, 0, 5, 10], coarse.Samples.Select(sample => sample.TimeSeconds));
    }

    public void Dispose() => _folder.Dispose();

    private static T[] Column<T>(RowGroupReader group, string name)
    {
        int index = SignalTable.All.ToList().FindIndex(signal => signal.Name == name);
        using LogicalColumnReader<T> column = group.Column(index).LogicalReader<T>();
        return column.ReadAll((int)group.MetaData.NumRows);
    }
}
