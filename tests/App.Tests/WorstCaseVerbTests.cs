using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The worst case from the command line: the page, the contract, the case that is written, what is refused.</summary>
public sealed class WorstCaseVerbTests : IDisposable
{
    private static readonly string[] Page = [.. File.ReadAllLines(Path.Combine(Repository.Root, "sim", "worst-case.md")).Select(line => line.TrimEnd())];
    private static readonly string Rig = Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml");

    private readonly Cli _cli = new();

    [Fact]
    public async Task Page_Blocks_AreWhatDesignPrintsAndTheWrittenCaseKeepsThemInASweep()
    {
        string path = Path.Combine(_cli.OutFolder, "worst.toml");
        Assert.Equal(0, await _cli.Run("design", Rig, "--worst-case", "--starts", "1000", "--write-case", path));
        AssertShown(_cli.Output);
        AssertShown(_cli.Errors.Replace(path, "out/worst.toml", StringComparison.Ordinal));
        AssertShown(string.Join('\n', File.ReadLines(path).Except(File.ReadLines(Rig))));

        Assert.Equal(0, await _cli.Run("sweep", path, "--count", "200", "--out", _cli.OutFolder));
        Assert.Contains("0 of them pass a limit", _cli.Output, StringComparison.Ordinal);

        string three = _cli.Write("case.toml", File.ReadAllText(Rig).Replace("peak-current = \"32 A\"", "peak-current = \"28 A\"", StringComparison.Ordinal));
        Assert.Equal(2, await _cli.Run("design", three, "--worst-case"));
        AssertShown(_cli.Errors.Replace(three, "case.toml", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Design_Json_HasTheWorstCaseBesideEverythingElse()
    {
        Assert.Equal(0, await _cli.Run("design", Rig, "--worst-case", "--starts", "50", "--seed", "9", "--json"));
        JsonElement worst = _cli.Json().GetProperty("worstCase");
        AssertHasKeys(worst, "verified", "limitAmps", "peakAmps", "peakTorqueNewtonMetres", "spareTorque", "seed", "decisive", "corners", "allCorners", "climbedPeakAmps", "climbedSeconds", "textbookStages", "chosen", "textbook");
        AssertHasKeys(worst.GetProperty("chosen"), "peakAmps", "cutout", "where", "torqueRatio", "torqueStage", "seen", "nominal");
        AssertHasKeys(worst.GetProperty("chosen").GetProperty("where")[0], "path", "unit", "value", "isLow", "isHigh");
        AssertHasKeys(worst.GetProperty("textbook").GetProperty("seen"), "starts", "highestAmps", "highestRow", "above", "unfinished", "longestSeconds");
        AssertHasKeys(worst.GetProperty("textbook").GetProperty("nominal"), "seconds", "sectionJoules", "armatureJoules");
        Assert.Equal(9, worst.GetProperty("seed").GetInt32());
        Assert.Equal(50, worst.GetProperty("chosen").GetProperty("seen").GetProperty("starts").GetInt64());

        Assert.Equal(0, await _cli.Run("design", Rig, "--json"));
        Assert.Equal(JsonValueKind.Null, _cli.Json().GetProperty("worstCase").ValueKind);
    }

    [Theory]
    [InlineData("--starts: found it without --worst-case", "--starts", "5")]
    [InlineData("--spare-torque: found it without --worst-case", "--spare-torque", "5")]
    [InlineData("--spare-torque: found -1; allowed: 0 to 500", "--worst-case", "--spare-torque", "-1")]
    [InlineData("--starts: found \"0\"; allowed: a whole number from 1 to 10000000", "--worst-case", "--starts", "0")]
    [InlineData("--worst-case: found it beside --parts or --stock", "--worst-case", "--parts", "E24")]
    public async Task Options_ThatCannotBe_AreRefusedWithWhatIsAllowed(string words, params string[] options)
    {
        Assert.Equal(2, await _cli.Run(["design", Rig, .. options]));
        Assert.Contains(words, _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CtrlC_EndsItWithoutAFile()
    {
        using CancellationTokenSource stop = new();
        string path = Path.Combine(_cli.OutFolder, "worst.toml");
        Task<int> run = _cli.RunUntil(stop.Token, "design", Rig, "--worst-case", "--starts", "10000000", "--write-case", path);
        await Task.Delay(500, TestContext.Current.CancellationToken);
        await stop.CancelAsync();
        Assert.Equal(5, await run);
        Assert.False(File.Exists(path));
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertHasKeys(JsonElement element, params string[] keys) => Assert.Equal(keys, element.EnumerateObject().Select(property => property.Name));

    private static void AssertShown(string printed)
    {
        string[] missing = [.. printed.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0).Except(Page)];
        Assert.True(missing.Length == 0, "not in sim/worst-case.md:\n" + string.Join('\n', missing));
    }
}
