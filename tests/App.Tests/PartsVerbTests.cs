using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using System.Xml.Linq;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Bought parts from the command line: the page, the contract, the case that is written, the report, what is refused.</summary>
public sealed class PartsVerbTests : IDisposable
{
    private static readonly string[] Page = File.ReadAllLines(Path.Combine(Repository.Root, "sim", "parts.md"));
    private static readonly string LineShaft = Path.Combine(Repository.Root, "sim", "cases", "line-shaft.toml");
    private static readonly string Stock = Path.Combine(Repository.Root, "sim", "cases", "stock.csv");
    private static readonly string[] Bought = ["--stock", Stock, "--parts-per-section", "2", "--objective", "price"];

    private readonly Cli _cli = new();

    [Fact]
    public async Task Page_Blocks_AreWhatDesignPrints()
    {
        Assert.Equal(0, await _cli.Run(["design", LineShaft, .. Bought]));
        AssertShown(_cli.Output);
        Assert.Contains("hot enough to burn", _cli.Errors, StringComparison.Ordinal);

        Assert.Equal(2, await _cli.Run("design", LineShaft, "--parts", "E24"));
        AssertShown(_cli.Errors);
        string few = _cli.WriteLineShaft("slack = \"last section\"", "stages = 2");
        Assert.Equal(2, await _cli.Run("design", few, "--parts", "E24"));
        AssertShown(_cli.Errors.Replace(few, "case.toml", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_BadRows_AreWhatDesignAnswers()
    {
        string bad = _cli.Write("bad.csv", "ohm,watts,joules,price\n0.5,100,900,3\n0.5 A,100,900,3\n0.6,100,900,EUR 3\n");

        Assert.Equal(2, await _cli.Run("design", LineShaft, "--stock", bad, "--out", _cli.OutFolder));

        AssertShown(_cli.Errors.Replace(bad, "bad.csv", StringComparison.Ordinal));
        Assert.Empty(_cli.Output);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    [Fact]
    public async Task BadRows_Skipped_AreNamedAndTheOthersUsed()
    {
        string list = _cli.Write("list.csv", await File.ReadAllTextAsync(Stock, TestContext.Current.CancellationToken) + "X,-1,100,900,,3,\n");

        Assert.Equal(0, await _cli.Run("design", LineShaft, "--stock", list, "--parts-per-section", "2", "--bad-rows", "skip"));

        Assert.Contains("row skipped: " + list + ":26: ohm: found \"-1\"", _cli.Errors, StringComparison.Ordinal);
        Assert.Contains("Bought parts of", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Design_Json_HasThePartsBesideEverythingElse()
    {
        Assert.Equal(0, await _cli.Run(["design", LineShaft, .. Bought, "--json"]));

        JsonElement parts = _cli.Json().GetProperty("parts");
        AssertHasKeys(parts, "source", "objective", "partsPerSection", "startsPerHour", "peakLimitAmps", "switchingAmps", "worstPeakAmps", "count", "price", "proven", "sections", "bill");
        AssertHasKeys(parts.GetProperty("sections")[0], "stage", "wantedOhms", "ohms", "network", "worstVolts", "parts");
        AssertHasKeys(parts.GetProperty("sections")[0].GetProperty("parts")[0], "part", "ohms", "ratedWatts", "ratedJoules", "joules", "meanWatts", "ratingShare", "worstVolts");
        AssertHasKeys(parts.GetProperty("bill")[0], "part", "ohms", "count", "unitPrice", "price");
        JsonElement[] stages = [.. _cli.Json().GetProperty("stages").EnumerateArray()], sections = [.. parts.GetProperty("sections").EnumerateArray()];
        Assert.Equal(stages.Length, sections.Length);
        for (int i = 0; i < stages.Length; i++) Assert.Equal(sections[i].GetProperty("ohms").GetDouble(), stages[i].GetProperty("sectionOhms").GetDouble(), 1e-9);
        Assert.Equal(parts.GetProperty("price").GetDecimal(), parts.GetProperty("bill").EnumerateArray().Sum(line => line.GetProperty("price").GetDecimal()));
        Assert.Equal(parts.GetProperty("count").GetInt32(), parts.GetProperty("bill").EnumerateArray().Sum(line => line.GetProperty("count").GetInt32()));
    }

    [Fact]
    public async Task Design_JsonWithoutParts_SaysThatThereAreNone()
    {
        await _cli.Run("design", LineShaft, "--json");

        Assert.Equal(JsonValueKind.Null, _cli.Json().GetProperty("parts").ValueKind);
    }

    [Fact]
    public async Task WriteCase_ThenRunAndReport_UseTheRealSections()
    {
        string path = Path.Combine(_cli.OutFolder, "bought.toml");
        Assert.Equal(0, await _cli.Run(["design", LineShaft, .. Bought, "--write-case", path, "--json"]));
        double[] sections = [.. _cli.Json().GetProperty("stages").EnumerateArray().Select(stage => stage.GetProperty("sectionOhms").GetDouble())];
        double[] joules = [.. _cli.Json().GetProperty("stages").EnumerateArray().Select(stage => stage.GetProperty("energyJoules").GetDouble())];
        string hash = _cli.Json().GetProperty("caseSha256").GetString()!;

        Assert.Equal(0, await _cli.Run("design", path, "--json"));
        Assert.Equal(sections, _cli.Json().GetProperty("stages").EnumerateArray().Select(stage => stage.GetProperty("sectionOhms").GetDouble()));
        Assert.Equal(hash, _cli.Json().GetProperty("caseSha256").GetString());

        // Contactors that take 40 ms leave a section in longer than it was designed for.
        Assert.Equal(0, await _cli.Run("run", path, "--json", "--out", _cli.OutFolder));
        double[] ran = [.. _cli.Json().GetProperty("sectionJoules").EnumerateArray().Select(element => element.GetDouble())];
        for (int i = 0; i < joules.Length; i++) Assert.InRange(ran[i] / joules[i], 0.85, 1.15);

        Assert.Equal(0, await _cli.Run(["report", LineShaft, .. Bought, "--json", "--out", _cli.OutFolder]));
        Assert.Equal(hash, _cli.Json().GetProperty("caseSha256").GetString());
        XDocument page = XDocument.Parse(await File.ReadAllTextAsync(_cli.Json().GetProperty("report").GetString()!, TestContext.Current.CancellationToken));
        XElement part = Assert.Single(page.Descendants("section"), section => (string?)section.Attribute("id") == "parts");
        Assert.Equal(3, part.Descendants("table").Count());
        Assert.Contains("50.50", part.Value, StringComparison.Ordinal);
        Assert.Contains(page.Descendants("a"), link => (string?)link.Attribute("href") == "#parts");
    }

    [Fact]
    public async Task Report_WithoutParts_HasNoSuchSection()
    {
        await _cli.Run("report", LineShaft, "--out", _cli.OutFolder);

        Assert.DoesNotContain("#parts", await File.ReadAllTextAsync(Path.Combine(_cli.OutFolder, "line-shaft.report.html"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--parts: found \"E25\"; allowed: E6, E12, E24, E48, E96", "--parts", "E25")]
    [InlineData("--objective: found \"weight\"; allowed: peak, price, count", "--parts", "E24", "--objective", "weight")]
    [InlineData("--objective: found \"price\" with --parts", "--parts", "E24", "--objective", "price")]
    [InlineData("--parts-per-section: found \"5\"; allowed: a whole number, 1 to 4", "--parts", "E24", "--parts-per-section", "5")]
    [InlineData("--stock: found it beside --parts", "--parts", "E24", "--stock", "x.csv")]
    [InlineData("--parts-per-section: found it without parts", "--parts-per-section", "2")]
    [InlineData("--write-case: found it with nothing to choose", "--write-case", "x.toml")]
    [InlineData("--bad-rows: found \"use\"; allowed: refuse, skip", "--stock", "x.csv", "--bad-rows", "use")]
    [InlineData("--starts-per-hour: found 0; allowed: 0.01 to 3600", "--parts", "E24", "--starts-per-hour", "0")]
    [InlineData("--give: found 60; allowed: 0 to 50", "--parts", "E24", "--give", "60")]
    public async Task Options_ThatCannotBe_AreRefusedWithWhatIsAllowed(string words, params string[] options)
    {
        Assert.Equal(2, await _cli.Run(["design", LineShaft, .. options]));

        Assert.Contains(words, _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
    }

    [Fact]
    public async Task WriteCase_OntoTheCaseItself_IsRefused()
    {
        string path = _cli.WriteLineShaft("155 A", "155 A");
        string before = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);

        Assert.Equal(2, await _cli.Run("design", path, "--parts", "E96", "--write-case", path));

        Assert.Equal(before, await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertShown(string printed)
    {
        string own = printed.Replace(Stock, "sim/cases/stock.csv", StringComparison.Ordinal).Replace(LineShaft, "sim/cases/line-shaft.toml", StringComparison.Ordinal);
        string[] missing = [.. own.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0).Except(Page)];
        Assert.True(missing.Length == 0, "not in sim/parts.md:\n" + string.Join('\n', missing));
    }

    private static void AssertHasKeys(JsonElement json, params string[] keys) =>
        Assert.Empty(keys.Except(json.EnumerateObject().Select(property => property.Name)));
}
