using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using Xunit;

namespace StarterCtl.App.Tests;

public sealed class VerbTests : IDisposable
{
    private readonly Cli _cli = new();

    [Fact]
    public async Task Demo_WritesCaseRecordResultAndReport_AndKeepsAChangedCase()
    {
        Assert.Equal(0, await _cli.Run("--out", _cli.OutFolder));

        string[] names = [.. Directory.GetFiles(_cli.OutFolder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        Assert.Equal(["line-shaft.record.csv", "line-shaft.record.json", "line-shaft.report.html", "line-shaft.run.json", "line-shaft.settings.txt", "line-shaft.toml"], names);

        string mine = Path.Combine(_cli.OutFolder, "line-shaft.toml");
        await File.WriteAllTextAsync(mine, "# mine", TestContext.Current.CancellationToken);
        Assert.Equal(0, await _cli.Run("--out", _cli.OutFolder));
        Assert.Equal("# mine", await File.ReadAllTextAsync(mine, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("line-shaft.toml", 4, 152.7)]
    [InlineData("bench-rig.toml", 2, 31.65)]
    public async Task ShippedCase_Runs_AndPasses(string name, int stages, double peakAmps)
    {
        int code = await _cli.Run("run", _cli.Write(name, ShippedCases.Text(name)), "--json", "--out", _cli.OutFolder);

        Assert.Equal(0, code);
        Assert.Equal("pass", _cli.Json().GetProperty("verdict").GetString());
        Assert.Equal(stages, _cli.Json().GetProperty("cutouts").GetArrayLength());
        Assert.Equal(peakAmps, _cli.Json().GetProperty("peakAmps").GetDouble(), 0.05);
        Assert.Empty(_cli.Json().GetProperty("warnings").EnumerateArray());
    }

    [Fact]
    public async Task Run_WithOneNumberChanged_ShowsWhatChanges()
    {
        string heavier = _cli.WriteLineShaft("inertia = \"2.2 kg m2\"", "inertia = \"6.2 kg m2\"");
        string shipped = _cli.Write("shipped.toml", ShippedCases.Text("line-shaft.toml"));

        await _cli.Run("run", shipped, "--json", "--out", _cli.OutFolder);
        double before = _cli.Json().GetProperty("secondsToSpeed").GetDouble();
        int code = await _cli.Run("run", heavier, "--json", "--out", _cli.OutFolder);

        // Inertia at the shaft goes from 2.65 to 6.65 kg m2, the time to speed nearly in proportion; the limit of 6 s is missed.
        Assert.Equal(1, code);
        Assert.Equal(before * 6.65 / 2.65, _cli.Json().GetProperty("secondsToSpeed").GetDouble(), 0.5);
        Assert.Equal("fail", _cli.Json().GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Run_RedirectedTable_IsNeitherWrappedNorColoured()
    {
        await _cli.Run("run", _cli.Write("c.toml", ShippedCases.Text("line-shaft.toml")), "--out", _cli.OutFolder);

        Assert.DoesNotContain('\u001b', _cli.Output);
        Assert.Contains(_cli.Output.Split('\n'), line => line.Contains("stage 1 is cut out", StringComparison.Ordinal) && line.Contains("has passed", StringComparison.Ordinal));
        Assert.Contains("Verdict: pass", _cli.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("design")]
    [InlineData("run")]
    [InlineData("report")]
    public async Task Help_OfEveryVerb_ShowsAnExampleThatNamesAShippedCase(string verb)
    {
        int code = await _cli.Run(verb, "--help");

        Assert.Equal(0, code);
        Assert.Contains($"starterctl {verb} sim/cases/line-shaft.toml", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("--json", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Out_NamingAFile_IsThatFile()
    {
        string path = Path.Combine(_cli.Folder, "mine.html");

        int code = await _cli.Run("report", _cli.Write("c.toml", ShippedCases.Text("bench-rig.toml")), "--out", path);

        Assert.Equal(0, code);
        Assert.True(new FileInfo(path).Length > 10_000);
    }

    [Fact]
    public void OutputFiles_WhoseWriterFails_LeaveTheOldFileAndNothingElse()
    {
        string path = _cli.Write("kept.txt", "old");

        Assert.Throws<OperationCanceledException>(() =>
        {
            using OutputFiles files = new(null);
            files.Add("the first", Path.Combine(_cli.Folder, "made", "first.txt"), writer => writer.Write("whole"));
            files.Add("the second", path, writer =>
            {
                writer.Write("half");
                throw new OperationCanceledException();
            });
            files.Commit();
        });

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["kept.txt"], Directory.GetFileSystemEntries(_cli.Folder).Select(Path.GetFileName));
    }

    // A record of a row every 0.1 s stays in memory for long, one of every period is written all the time.
    [Theory]
    [InlineData("3600 s", "10 us", "100 ms", 0)]
    [InlineData("60 s", "20 us", "20 us", 1_000_000)]
    public async Task CtrlC_WhileItRunsOrWrites_EndsWithCode5AndLeavesNoFile(string duration, string period, string recordPeriod, long writtenBytes)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "sends a POSIX signal");
        string text = ShippedCases.Text("line-shaft.toml")
            .Replace("duration = \"8 s\"", $"duration = \"{duration}\"\nrecord-period = \"{recordPeriod}\"", StringComparison.Ordinal)
            .Replace("\nperiod = \"1 ms\"", $"\nperiod = \"{period}\"", StringComparison.Ordinal);
        using RunningProgram program = RunningProgram.Start("run", _cli.Write("long.toml", text), "--out", _cli.OutFolder);

        await program.Until(() => Directory.Exists(_cli.OutFolder) && Directory.GetFiles(_cli.OutFolder, "*.csv").Any(file => new FileInfo(file).Length >= writtenBytes));
        await program.Interrupt();

        Assert.Equal(5, await program.ExitCode());
        Assert.Contains("cancelled", program.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    public void Dispose() => _cli.Dispose();
}
