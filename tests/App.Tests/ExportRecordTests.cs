using System;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The record of a trial in the formats of other programs.</summary>
public sealed class ExportRecordTests : IDisposable
{
    private readonly Cli _cli = new();

    private string Bundle => Path.Combine(_cli.OutFolder, "rig.bundle.zip");

    private string Exported => Path.Combine(_cli.Folder, "exported");

    [Fact]
    public async Task Record_OfABundle_IsWrittenInEveryFormat()
    {
        await RunTrial();

        Assert.Equal(0, await _cli.Run("export", "record", Bundle, "--format", "csv,parquet,comtrade,comtrade-ascii,vcd", "--out", Exported));

        string[] suffixes = [.. Enum.GetValues<RecordFormat>().SelectMany(RecordFormats.FilesOf).Select(file => file.Suffix)];
        Assert.Equal(suffixes.Select(suffix => "rig." + suffix).Order(StringComparer.Ordinal), Directory.GetFileSystemEntries(Exported).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
        Assert.Equal(Text("record.csv"), File.ReadAllText(Path.Combine(Exported, "rig.record.csv")));
        Assert.Equal(Text("record.json"), File.ReadAllText(Path.Combine(Exported, "rig.record.json")));
        // Six seconds at 1000 a second, the beginning and the power-up.
        Assert.Contains("1000,6002\r\n", File.ReadAllText(Path.Combine(Exported, "rig.record.cfg")), StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("replay", Path.Combine(Exported, "rig.record.parquet")));
        Assert.EndsWith("Verdict: same\n", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bundle_IsARecordForReplayAndForATrialToo()
    {
        await RunTrial();

        Assert.Equal(0, await _cli.Run("replay", Bundle));
        Assert.Contains("rig.bundle.zip: 6002 ticks of 1 ms, case bench-rig.toml", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("export", "trial", Bundle, "--case", RunningBoard.BenchRig, "--out", Exported));
        Assert.True(File.Exists(Path.Combine(Exported, "rig.trial.toml")));
    }

    [Fact]
    public async Task Record_ThatIsCut_IsWrittenToItsLastGoodRow()
    {
        Assert.Equal(0, await _cli.Run("run", RunningBoard.BenchRig, "--every-period", "--out", _cli.OutFolder));
        string csv = Path.Combine(_cli.OutFolder, "bench-rig.record.csv");
        string[] lines = File.ReadAllLines(csv);
        File.WriteAllText(csv, string.Join('\n', lines[..3001]) + "\n1,2,");

        Assert.Equal(0, await _cli.Run("export", "record", csv, "--format", "parquet", "--out", Exported));

        Assert.Contains("warning: read 3000 rows and stopped at line 3002: 3 cells; allowed: 38", _cli.Errors, StringComparison.Ordinal);
        using RecordReader reader = RecordReader.Open(Path.Combine(Exported, "bench-rig.record.parquet"));
        Assert.Equal(3000, reader.Samples().Count());
    }

    [Fact]
    public async Task Record_OverWhatIsRead_IsRefused()
    {
        Assert.Equal(0, await _cli.Run("run", RunningBoard.BenchRig, "--out", _cli.OutFolder));
        string csv = Path.Combine(_cli.OutFolder, "bench-rig.record.csv"), before = File.ReadAllText(csv);

        Assert.Equal(2, await _cli.Run("export", "record", csv, "--out", _cli.OutFolder));

        Assert.Contains("it is what is read", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(csv));
    }

    [Theory]
    [InlineData("nowhere.zip", "nowhere.zip: found no bundle (")]
    [InlineData("nowhere.csv", "nowhere.csv: found no such file; allowed: a record that exists")]
    [InlineData("text.zip", "text.zip: found no bundle (")]
    [InlineData("text.vcd", "text.vcd: found a file of the kind .vcd; allowed: a record, .csv or .parquet")]
    public async Task What_IsNoRecord_IsRefusedAndNothingIsWritten(string name, string words)
    {
        if (name.StartsWith("text", StringComparison.Ordinal)) _cli.Write(name, "text");

        Assert.Equal(2, await _cli.Run("export", "record", Path.Combine(_cli.Folder, name), "--format", "vcd", "--out", Exported));

        Assert.Contains(words, _cli.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Exported));
    }

    public void Dispose() => _cli.Dispose();

    private async Task RunTrial()
    {
        string trial = _cli.Write("rig.trial.toml", $"case = \"{RunningBoard.BenchRig}\"\n[[expect]]\nname = \"peak\"\nsignal = \"armatureAmps\"\nat-most = \"33 A\"\n");
        Assert.Equal(0, await _cli.Run("trial", trial, "--bundle", "--out", _cli.OutFolder));
    }

    private string Text(string name)
    {
        using ZipArchive archive = ZipFile.OpenRead(Bundle);
        using StreamReader reader = new(archive.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }
}
