using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The page of records says what the table of signals says and what the program prints.</summary>
public sealed class RecordsPageTests : IDisposable
{
    private static readonly string[] Page = File.ReadAllLines(Path.Combine(Repository.Root, "sim", "records.md"));

    private readonly Cli _cli = new();

    [Fact]
    public void Page_Signals_AreTheTable()
    {
        string[] rows = [.. SignalTable.All.Select(signal => $"| `{signal.Name}` | {signal.Unit} | {From(signal)} | {Values(signal)} | {signal.Description} |")];
        string[] shown = [.. Page.SkipWhile(line => line != "| signal | unit | from | values | what it is |").Skip(2).TakeWhile(line => line.StartsWith('|'))];

        Assert.True(rows.SequenceEqual(shown), "sim/records.md, the table of signals should be:\n" + string.Join('\n', rows));
    }

    [Fact]
    public void Page_Formats_AreThoseOfTheOption() =>
        Assert.Equal(RecordFormats.ByName.Keys, Page.SkipWhile(line => !line.StartsWith("| name | files", StringComparison.Ordinal)).Skip(2).TakeWhile(line => line.StartsWith('|')).Select(line => line.Split('`')[1]));

    [Fact]
    public async Task Page_Replays_AreWhatReplayPrints()
    {
        await _cli.Run("run", Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"), "--every-period", "--out", _cli.OutFolder);
        string record = Path.Combine(_cli.OutFolder, "bench-rig.record.csv");
        string slower = _cli.Write("slower.toml", ShippedCases.Text("bench-rig.toml").Replace("confirm-time = \"3 ms\"", "confirm-time = \"53 ms\"", StringComparison.Ordinal));

        await _cli.Run("replay", record);
        AssertShown(_cli.Output, Page, "sim/records.md");
        AssertShown(_cli.Output, File.ReadAllLines(Path.Combine(Repository.Root, "README.md")), "README.md");
        await _cli.Run("replay", record, "--with", slower);
        AssertShown(_cli.Output, Page, "sim/records.md");
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertShown(string printed, string[] page, string name)
    {
        string[] missing = [.. printed.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0).Except(page)];
        Assert.True(missing.Length == 0, $"not in {name}:\n" + string.Join('\n', missing));
    }

    private static string From(Signal signal) => signal.Role == SignalRole.Plant ? "simulation" : signal.Role.ToString().ToLowerInvariant();

    private static string Values(Signal signal) => signal.Kind switch
    {
        SignalKind.LongReal => "number",
        SignalKind.Real => "number, single precision",
        SignalKind.Whole => "whole number",
        SignalKind.Bits => "bits",
        SignalKind.Switch => "0 or 1",
        _ => "word",
    };
}
