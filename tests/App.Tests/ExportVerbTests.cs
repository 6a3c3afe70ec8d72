using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using StarterCtl.Ngspice;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The verb export and the page that shows it.</summary>
public sealed class ExportVerbTests : IDisposable
{
    private static readonly string[] Page = File.ReadAllLines(Path.Combine(Repository.Root, "sim", "spice.md"));

    private readonly Cli _cli = new();

    [Fact]
    public async Task Spice_OfTheLineShaft_WritesANetlistAndSaysWhatItLeavesOut()
    {
        string path = Path.Combine(_cli.Folder, "mine.cir");

        int code = await _cli.Run("export", "spice", LineShaft, "--out", path);

        Assert.Equal(0, code);
        Assert.Empty(_cli.Output);
        string netlist = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        Assert.StartsWith("* Line-shaft drive, 220 V, 15 kW\n", netlist, StringComparison.Ordinal);
        Assert.EndsWith(".end\n", netlist, StringComparison.Ordinal);
        Assert.Contains("warning: left out: Contactor times of 40 ms and 15 ms: contacts follow at once.", _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(Shown(_cli.Errors.Replace(path, "line-shaft.cir", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Spice_IntoAFolder_NamesTheFileAfterTheCase()
    {
        Assert.Equal(0, await _cli.Run("export", "spice", LineShaft, "--out", _cli.OutFolder));

        Assert.Equal(["line-shaft.spice.cir"], Directory.GetFiles(_cli.OutFolder).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Spice_OfACaseWithoutAStart_IsRefusedAndNothingIsWritten()
    {
        int code = await _cli.Run("export", "spice", Path.Combine(Repository.Root, "sim", "cases", "stalled.toml"), "--out", _cli.OutFolder);

        Assert.Equal(2, code);
        Assert.Matches(@"stalled\.toml:\d+: event\.at: found at the beginning event: the shaft jams; allowed: ", _cli.Errors);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    [Theory]
    [InlineData("export --help", "export")]
    [InlineData("export spice --help", "export", "spice", "case.toml", "--jsno")]
    public async Task Usage_Wrong_LeadsToTheHelpOfThatVerb(string hint, params string[] args)
    {
        Assert.Equal(2, await _cli.Run(args));

        Assert.Contains($"Try: starterctl {hint}", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_FiguresOfNgspice_AreWhatItPrints()
    {
        Assert.SkipWhen(NgspiceProgram.Path == null, NgspiceProgram.WhyNot);
        string path = Path.Combine(_cli.Folder, "line-shaft.cir");
        await _cli.Run("export", "spice", LineShaft, "--out", path);

        Dictionary<string, double> solved = NgspiceProgram.Solve(await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
        Dictionary<string, double> shown = Page.Select(line => Regex.Match(line, @"^(\w+) = (\S+)$")).Where(match => match.Success)
            .ToDictionary(match => match.Groups[1].Value, match => double.Parse(match.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture));

        Assert.Equal(solved.Keys, shown.Keys);
        // Another version of ngspice may take other steps.
        Assert.All(solved, figure => Assert.Equal(1, shown[figure.Key] / figure.Value, 1e-4));
    }

    [Fact]
    public async Task Page_OwnFigures_AreThoseOfTheNetlist()
    {
        string path = Path.Combine(_cli.Folder, "line-shaft.cir");
        await _cli.Run("export", "spice", LineShaft, "--out", path);
        string[] own = [.. (await File.ReadAllLinesAsync(path, TestContext.Current.CancellationToken)).Where(line => line.StartsWith("*   ", StringComparison.Ordinal))];

        Assert.Equal(11, own.Length);
        Assert.Empty(own.Except(Page));
    }

    public void Dispose() => _cli.Dispose();

    private static string LineShaft => Path.Combine(Repository.Root, "sim", "cases", "line-shaft.toml");

    private static string[] Shown(string printed) => [.. printed.Split('\n').Where(line => line.Length > 0).Except(Page)];
}
