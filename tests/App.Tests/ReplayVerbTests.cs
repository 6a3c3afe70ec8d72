using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Records as run writes them, and replay on top of them.</summary>
public sealed class ReplayVerbTests : IDisposable
{
    private readonly Cli _cli = new();

    private string Csv => Path.Combine(_cli.OutFolder, "bench-rig.record.csv");

    [Theory]
    [InlineData("csv", "bench-rig.record.csv")]
    [InlineData("parquet", "bench-rig.record.parquet")]
    public async Task Replay_OfARecordOfEveryPeriod_IsTheSame(string format, string name)
    {
        await RecordBenchRig("--format", format);

        int code = await _cli.Run("replay", Path.Combine(_cli.OutFolder, name));

        Assert.Equal(0, code);
        Assert.Contains($"{name}: 6002 ticks of 1 ms, case bench-rig.toml", _cli.Output, StringComparison.Ordinal);
        Assert.EndsWith("Verdict: same\n", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Replay_OfAChangedDecision_NamesItWithTheReadingsAroundIt()
    {
        await RecordBenchRig();
        string[] lines = File.ReadAllLines(Csv);
        string[] cells = lines[4001].Split(',');
        int closeLine = Array.IndexOf(lines[0].Split(','), "closeLine");
        cells[closeLine] = "0";
        lines[4001] = string.Join(',', cells);
        File.WriteAllLines(Csv, lines);

        int code = await _cli.Run("replay", Csv);
        Assert.Equal(1, code);
        Assert.Contains("1 ticks differ, row 4001 at 3.999000 s first: closeLine was 0, is 1.", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(7, _cli.Output.Split('\n').Count(line => line.Contains("line 1 2", StringComparison.Ordinal)));
        Assert.EndsWith("Verdict: different\n", _cli.Output, StringComparison.Ordinal);

        await _cli.Run("replay", Csv, "--json");
        JsonElement first = _cli.Json().GetProperty("first");
        Assert.Equal((4001, "closeLine", "0", "1"), (first.GetProperty("row").GetInt32(), first.GetProperty("signal").GetString(), first.GetProperty("recorded").GetString(), first.GetProperty("replayed").GetString()));
    }

    [Fact]
    public async Task Replay_WithAnotherCaseOrItsSettings_TellsTheCutoutsOfBoth()
    {
        await RecordBenchRig();
        string changed = _cli.Write("slower.toml", ShippedCases.Text("bench-rig.toml").Replace("confirm-time = \"3 ms\"", "confirm-time = \"53 ms\"", StringComparison.Ordinal));
        await _cli.Run("run", changed, "--out", _cli.OutFolder);

        foreach (string with in (string[])[changed, Path.Combine(_cli.OutFolder, "slower.settings.txt")])
        {
            int code = await _cli.Run("replay", Csv, "--with", with, "--json");

            Assert.Equal(0, code);
            JsonElement json = _cli.Json();
            Assert.True(json.GetProperty("withOtherSettings").GetBoolean());
            Assert.Equal(0.05, Cutout(json, "replayed") - Cutout(json, "recorded"), 1e-9);
        }

        await _cli.Run("replay", Csv, "--with", changed);
        Assert.Contains("The machine does not answer", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Replay_OfATruncatedRecord_SaysWhereItStopped()
    {
        await RecordBenchRig();
        string text = File.ReadAllText(Csv);
        File.WriteAllText(Csv, text[..(text.Length / 2)]);

        int code = await _cli.Run("replay", Csv);

        Assert.Equal(0, code);
        Assert.Contains("Verdict: same, as far as the record can be read", _cli.Output, StringComparison.Ordinal);
        Assert.Matches(@"warning: read \d+ rows and stopped at line \d+: ", _cli.Errors);
    }

    [Fact]
    public async Task Replay_OfWhatIsNoRecord_EndsWithCode2()
    {
        await RecordBenchRig();
        string header = Path.ChangeExtension(Csv, ".json");
        File.WriteAllText(header, File.ReadAllText(header).Replace("\"recordPeriodMicroseconds\": 1000", "\"recordPeriodMicroseconds\": 5000", StringComparison.Ordinal));

        Assert.Equal(2, await _cli.Run("replay", Csv));
        Assert.Contains("--every-period", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(2, await _cli.Run("replay", Path.Combine(_cli.Folder, "nowhere.csv")));
        Assert.Contains("nowhere.csv: found no such file; allowed: a record that exists", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(2, await _cli.Run("replay", Csv, "--with", _cli.Write("odd.txt", "version = 1\n")));
        Assert.Contains("odd.txt: found settings that cannot be used (version: found 1", _cli.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("xls", "--format: found \"xls\"; allowed: csv, parquet, comtrade, comtrade-ascii, vcd")]
    [InlineData("csv,csv", "--format: found \"csv,csv\", one of them twice; allowed: each once")]
    [InlineData("", "--format: found \"\"; allowed: ")]
    public async Task Run_WithAFormatThatIsNone_SaysWhichThereAre(string format, string message)
    {
        Assert.Equal(2, await _cli.Run("run", _cli.WriteLineShaft("period", "period"), "--format", format));
        Assert.Contains(message, _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WithEveryFormat_WritesItsFilesAndNothingElse()
    {
        await RecordBenchRig("--format", "csv,parquet,comtrade,comtrade-ascii,vcd");

        string[] suffixes = [.. Enum.GetValues<RecordFormat>().SelectMany(format => RecordFormats.FilesOf(format)).Select(file => file.Suffix), "settings.txt", "run.json"];
        Assert.Equal(suffixes.Select(suffix => "bench-rig." + suffix).Order(StringComparer.Ordinal), Directory.GetFileSystemEntries(_cli.OutFolder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
    }

    // The system's own file that is always full stands where the record is written.
    [Fact]
    public async Task Run_OnAFullDisk_EndsWithCode4AndNamesWhatIsKept()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "needs a /dev/full");
        Directory.CreateDirectory(_cli.OutFolder);
        string beside = Path.Combine(_cli.OutFolder, $"bench-rig.record.{Environment.ProcessId}.partial.csv");
        File.CreateSymbolicLink(beside, "/dev/full");

        int code = await _cli.Run("run", BenchRig(), "--out", _cli.OutFolder, "--every-period");

        Assert.Equal(4, code);
        Assert.Contains($"{Csv}: cannot be written: the disk is full; what was recorded so far is kept at {beside}; allowed: ", _cli.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(Csv));
        Assert.True(File.Exists(Path.ChangeExtension(beside, ".json")));
    }

    [Theory]
    [InlineData("csv", "*.partial.csv")]
    [InlineData("parquet", "*.parts")]
    public async Task Run_KilledOnTheWay_LeavesARecordUpToItsLastFlush(string format, string left)
    {
        string path = _cli.Write("long.toml", ShippedCases.Text("bench-rig.toml").Replace("duration = \"6 s\"", "duration = \"3600 s\"", StringComparison.Ordinal));
        using RunningProgram program = RunningProgram.Start("run", path, "--every-period", "--format", format, "--out", _cli.OutFolder);
        string? found = null;

        await program.Until(() => Directory.Exists(_cli.OutFolder) && (found = Directory.EnumerateFileSystemEntries(_cli.OutFolder, left).FirstOrDefault(IsFlushed)) != null);
        program.Kill();

        Assert.NotNull(found);
        using RecordReader reader = RecordReader.Open(found);
        Sample[] samples = [.. reader.Samples()];
        Assert.True(samples.Length >= 10_000, samples.Length.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(0, await _cli.Run("replay", found));
        Assert.Empty(Directory.EnumerateFiles(_cli.OutFolder, "long.record.csv"));

        static bool IsFlushed(string entry) =>
            Directory.Exists(entry) ? Directory.EnumerateFiles(entry, "*.parquet").Any() : new FileInfo(entry).Length > 3_000_000;
    }

    public void Dispose() => _cli.Dispose();

    private static double Cutout(JsonElement json, string course) => json.GetProperty(course).GetProperty("cutouts")[0].GetProperty("seconds").GetDouble();

    private static string BenchRig() => Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml");

    private async Task RecordBenchRig(params string[] more) =>
        Assert.Equal(0, await _cli.Run(["run", BenchRig(), "--every-period", "--out", _cli.OutFolder, .. more]));
}
