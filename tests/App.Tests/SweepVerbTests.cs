using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The verb sweep, and run of one of its rows.</summary>
public sealed class SweepVerbTests : IDisposable
{
    private readonly Cli _cli = new();

    private static string CasePath => Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml");

    [Fact]
    public async Task Sweep_OfAShippedCase_WritesRowsAndSummaryAndFailsWhereALimitIsPassed()
    {
        int code = await _cli.Run("sweep", CasePath, "--count", "50", "--seed", "7", "--json", "--out", _cli.OutFolder);

        using JsonDocument json = JsonDocument.Parse(_cli.Output);
        JsonElement failed = json.RootElement.GetProperty("failed");
        Assert.Equal((1, "fail", 50), (code, json.RootElement.GetProperty("verdict").GetString(), failed.GetProperty("of").GetInt32()));
        Assert.InRange(failed.GetProperty("count").GetInt32(), 1, 50);
        Assert.Equal(["bench-rig.sweep.json", "bench-rig.sweep.parquet"], Directory.GetFiles(_cli.OutFolder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task SweepsPage_Block_IsWhatTheProgramPrints()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "sim", "sweeps.md"));

        await _cli.Run("sweep", CasePath, "--count", "500", "--seed", "7", "--out", _cli.OutFolder);
        string[] printed = [.. _cli.Output.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0)];

        // The last line names the case as it was called.
        Assert.True(printed.Length > 15);
        Assert.All(printed[..^1], line => Assert.Contains("\n" + line + "\n", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task SweepsPage_BlockOfWhatDrives_IsWhatTheProgramPrints()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "sim", "sweeps.md"));
        string[] shown = page.Split("--method sensitivity --count 3328 --seed 7\n```\n\n```\n")[1].Split("\n```")[0].Split('\n', StringSplitOptions.RemoveEmptyEntries);

        await _cli.Run("sweep", CasePath, "--method", "sensitivity", "--count", "3328", "--seed", "7", "--out", _cli.OutFolder);
        string[] printed = [.. _cli.Output.Split('\n').Select(line => line.TrimEnd())];

        Assert.True(shown.Length > 25);
        Assert.All(shown, line => Assert.Contains(line, printed));
        // But for the command of the worst row.
        Assert.All(printed.Where(line => !line.Contains("starterctl run", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public async Task Sweep_ByTheMethodSensitivity_NamesWhatDrivesEachOutcomeInTheJson()
    {
        await _cli.Run("sweep", CasePath, "--method", "sensitivity", "--count", "215", "--json", "--out", _cli.OutFolder);

        using JsonDocument json = JsonDocument.Parse(_cli.Output);
        JsonElement[] outcomes = [.. json.RootElement.GetProperty("sensitivity").EnumerateArray()];
        JsonElement first = outcomes[0].GetProperty("inputs")[0];
        Assert.Equal(208, json.RootElement.GetProperty("sweep").GetProperty("count").GetInt32());
        Assert.Equal(["peak-current [A]", "full-supply-time [s]", "passed"], outcomes.Select(outcome => outcome.GetProperty("outcome").GetString()));
        Assert.Equal((16, 0), (outcomes[0].GetProperty("points").GetInt32(), outcomes[0].GetProperty("pointsWithoutValue").GetInt32()));
        Assert.InRange(first.GetProperty("total").GetProperty("value").GetDouble(), first.GetProperty("total").GetProperty("low").GetDouble(), first.GetProperty("total").GetProperty("high").GetDouble());
    }

    [Fact]
    public async Task Sweep_Cancelled_EndsWithItsCodeAndLeavesWhatWasThere()
    {
        await _cli.Run("sweep", CasePath, "--count", "5", "--out", _cli.OutFolder);
        string[] before = [.. Directory.GetFiles(_cli.OutFolder).Order(StringComparer.Ordinal)];
        byte[] rows = await File.ReadAllBytesAsync(Path.Combine(_cli.OutFolder, "bench-rig.sweep.parquet"), TestContext.Current.CancellationToken);
        using CancellationTokenSource stop = new();

        Task<int> sweeping = _cli.RunUntil(stop.Token, "sweep", CasePath, "--count", "1000000", "--out", _cli.OutFolder);
        while (Directory.GetFiles(_cli.OutFolder, "*.partial.parquet").Length == 0) await Task.Delay(5, TestContext.Current.CancellationToken);
        await stop.CancelAsync();

        Assert.Equal(5, await sweeping);
        Assert.Contains("cancelled; nothing is left half-written", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal("", _cli.Output);
        Assert.Equal(before, Directory.GetFiles(_cli.OutFolder).Order(StringComparer.Ordinal));
        Assert.Equal(rows, await File.ReadAllBytesAsync(before[1], TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("bench-rig.sweep", "parquet")]
    [InlineData("bench-rig.sweep", "json")]
    public async Task Sweep_OnAFullDisk_SaysSoAndLeavesWhatWasThere(string name, string extension)
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "needs a device that is always full");
        await _cli.Run("sweep", CasePath, "--count", "5", "--out", _cli.OutFolder);
        string path = Path.Combine(_cli.OutFolder, $"{name}.{extension}");
        byte[] before = await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
        File.CreateSymbolicLink(Path.Combine(_cli.OutFolder, $"{name}.{Environment.ProcessId}.partial.{extension}"), "/dev/full");

        Assert.Equal(4, await _cli.Run("sweep", CasePath, "--count", "6", "--out", _cli.OutFolder));
        Assert.Contains($"{path}: cannot be written: the disk is full", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken));
        Assert.Equal(["bench-rig.sweep.json", "bench-rig.sweep.parquet"], Directory.GetFiles(_cli.OutFolder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Sweep_WithAllItMayPass_EndsWell() =>
        Assert.Equal(0, await _cli.Run("sweep", CasePath, "--count", "10", "--allow", "1", "--out", _cli.OutFolder));

    [Fact]
    public async Task Sweep_WorstRow_IsRunAgainByItsOwnCommand()
    {
        await _cli.Run("sweep", CasePath, "--count", "50", "--seed", "7", "--method", "latin", "--json", "--out", _cli.OutFolder);
        using JsonDocument json = JsonDocument.Parse(_cli.Output);
        JsonElement worst = json.RootElement.GetProperty("worst")[0];
        string[] command = worst.GetProperty("command").GetString()!.Split(' ');

        using Cli again = new();
        await again.Run([.. command.Skip(1), "--json", "--out", again.OutFolder]);

        using JsonDocument run = JsonDocument.Parse(again.Output);
        Assert.Equal("highest peak current", worst.GetProperty("name").GetString());
        Assert.Equal(worst.GetProperty("value").GetDouble(), run.RootElement.GetProperty("peakAmps").GetDouble());
        Assert.True(File.Exists(Path.Combine(again.OutFolder, "bench-rig.record.csv")));
    }

    [Theory]
    [InlineData("sweep --count 0", "--count: found \"0\"; allowed: a whole number from 1 to 1000000000")]
    [InlineData("sweep --count 5 --method dice", "--method: found \"dice\"; allowed: sobol, latin, corners, factorial, sensitivity")]
    [InlineData("sweep --count 207 --method sensitivity", "found 207 starts; allowed: at least 208 with this method and 10 quantities")]
    [InlineData("sweep --count 5 --allow 2", "--allow: found \"2\"; allowed: a number from 0 to 1")]
    [InlineData("sweep", "found no number of starts; allowed: --count with this method")]
    [InlineData("run --seed 5", "found --seed without --row; allowed: --row with it, or no such option")]
    [InlineData("run --row 5 --count 5", "found row 5; allowed: a row of the sweep, 0 to 4")]
    public async Task Sweep_WithAWrongOption_SaysWhatIsAllowed(string call, string said)
    {
        string[] words = call.Split(' ');

        Assert.Equal(2, await _cli.Run([words[0], CasePath, .. words.Skip(1), "--out", _cli.OutFolder]));
        Assert.Contains(said, _cli.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    public void Dispose() => _cli.Dispose();
}
