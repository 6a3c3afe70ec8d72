using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

public sealed class StartReportTests
{
    private const int MostBytes = 700_000;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static Dictionary<string, Func<StartStudy>> Cases { get; } = new()
    {
        ["line shaft"] = () => Studies.LineShaft.Value,
        ["bench rig"] = () => Studies.BenchRig.Value,
        ["raised switching current"] = () => Studies.LineShaftOf(input => input with { Slack = Slack.RaiseSwitchingCurrent, StageCount = 3, SwitchingAmps = null }),
        ["lowered peak current"] = () => Studies.LineShaftOf(input => input with { Slack = Slack.LowerPeakCurrent, StageCount = 5, PeakAmps = null }),
        ["given sections"] = () => Studies.LineShaftOf(input => input with { SectionOhms = [0.6, 0.36, 0.2, 0.1], Slack = null }),
        ["hand thresholds"] = () => Studies.LineShaftOf(input => input with { SectionOhms = [0.6, 0.4, 0.25], CutoutVolts = [95, 150, 185], Slack = null, PeakAmps = null, SwitchingAmps = null }),
        ["trip"] = () => Studies.LineShaftOf(input => input, maximumStageSeconds: 0.3),
        ["nothing happens"] = () => Studies.LineShaftOf(input => input, events: [new RunEvent(1, null, null, OperatorCommand.Start)], durationSeconds: 0.5),
        ["sixteen stages"] = () => Studies.LineShaftOf(input => input with { Slack = Slack.RaiseSwitchingCurrent, StageCount = 16, SwitchingAmps = null }),
        ["stopped while running"] = () => Studies.LineShaftOf(input => input, events: [new RunEvent(0, null, null, OperatorCommand.Start), new RunEvent(6, null, null, OperatorCommand.Stop)]),
        ["heavier from the start"] = () => Studies.LineShaftOf(input => input, events: [new RunEvent(0, 300, null, null)]),
        ["load changes during the start"] = () => Studies.LineShaftOf(input => input, events: [new RunEvent(1, 160, null, null), new RunEvent(6, 5000, null, null)]),
        ["stopped"] = () => Studies.LineShaftOf(input => input, events: [new RunEvent(0, null, null, OperatorCommand.Start), new RunEvent(1, null, null, OperatorCommand.Stop)]),
    };

    public static TheoryData<string> Names { get; } = [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Html_AnyStudy_IsOneWellFormedFile(string name)
    {
        StartStudy study = Cases[name]();

        string html = Html(study);
        Keep(name, html);

        XDocument page = XDocument.Parse(html);
        Assert.True(html.Length < MostBytes, $"{html.Length} characters");
        Assert.Equal("en-GB", page.Root!.Attribute("lang")!.Value);
        string[] ids = [.. page.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", html, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Html_AnyStudy_ReachesForNothingOutside(string name)
    {
        string html = Html(Cases[name]());

        Assert.DoesNotContain(Regex.Matches(html, "https?://[^\"]*").Select(match => match.Value), address => address != Svg.NamespaceName);
        Assert.DoesNotContain("src=", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", html, StringComparison.OrdinalIgnoreCase);
        Assert.All(Regex.Matches(html, "href=\"([^\"]*)\"").Select(match => match.Groups[1].Value), target => Assert.Contains($"id=\"{target[1..]}\"", html, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Html_AnyStudy_PrintsEveryDesignedNumber(string name)
    {
        StartStudy study = Cases[name]();

        string html = Html(study);

        foreach (DesignedStage stage in study.Design.Stages)
        {
            foreach (double number in new[] { stage.TotalOhms, stage.SectionOhms, stage.CutoutVolts, stage.VoltsLeft, stage.SwitchingAmps, stage.PeakAmps })
            {
                Assert.Contains(Text.Number(number), html, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Html_EverySumShown_GivesTheNumberThatItClaims(string name)
    {
        StartStudy study = Cases[name]();
        XDocument page = XDocument.Parse(Html(study));
        string[] steps = [.. page.Descendants("div").Where(div => (string?)div.Attribute("class") == "sums").Descendants("p").Select(step => step.Value)];

        // a - b - c * d = e and the like: every chain of plain sums is worked out again from its printed numbers.
        int checkedSums = 0;
        foreach (string step in steps)
        {
            foreach (Match sum in Regex.Matches(step, @"= \(?((?:[\d.]+)(?: [−·/+] \(?[\d.]+\)?)+) = ([\d.]+)"))
            {
                double claimed = double.Parse(sum.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture);
                Assert.Equal(claimed, Sums.Value(sum.Groups[1].Value), Math.Abs(claimed) * 0.004 + 0.02);
                checkedSums++;
            }
        }

        Assert.True(checkedSums >= 3 * study.Design.StageCount, $"{checkedSums} sums for {study.Design.StageCount} stages");
    }

    [Fact]
    public void Html_SameStudyTwice_GivesTheSameBytes()
    {
        StartStudy study = Studies.LineShaft.Value;

        Assert.Equal(Html(study), Html(study));
    }

    [Fact]
    public void Html_TextOfTheCase_IsEscaped()
    {
        StartStudy study = Studies.LineShaft.Value with
        {
            Title = "<script>alert(1)</script> & \"more\"",
            CaseName = "<b>.toml",
            Warnings = ["<i>{0} {{ % </i>"],
        };

        string html = Html(study);

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;more&quot;", html, StringComparison.Ordinal);
        Assert.Contains("&lt;i&gt;{0} {{ % &lt;/i&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_EverySection_IsThereWithItsHeading()
    {
        XDocument page = XDocument.Parse(Html(Studies.LineShaft.Value));

        string[] expected = ["cautions", "machine", "regulation", "starter", "start", "plane", "energy", "direct", "loadstep", "run"];
        string?[] sections = [.. page.Descendants("section").Attributes("id").Select(id => id.Value)];
        Assert.Equal(expected, sections);
        Assert.Single(page.Descendants("h1"));
        Assert.All(expected, id => Assert.Single(page.Descendants("section").Single(section => (string?)section.Attribute("id") == id).Elements("h2")));
    }

    [Fact]
    public void Html_EveryDrawing_ScalesAndIsDescribed()
    {
        XDocument page = XDocument.Parse(Html(Studies.LineShaft.Value));

        XElement[] drawings = [.. page.Descendants(Svg + "svg")];
        Assert.True(drawings.Length >= 14);
        Assert.All(drawings, drawing =>
        {
            Assert.NotNull(drawing.Attribute("viewBox"));
            Assert.Null(drawing.Attribute("width"));
            Assert.Equal("img", drawing.Attribute("role")!.Value);
            Assert.True(drawing.Attribute("aria-label")!.Value.Length > 40);
        });
        Assert.All(page.Descendants("figure"), figure => Assert.Single(figure.Elements("figcaption")));
    }

    [Fact]
    public void Html_Timeline_SaysWhatTheEngineSays()
    {
        StartStudy study = Studies.LineShaft.Value;
        string text = XDocument.Parse(Html(study)).Root!.Value;

        Assert.All(study.Result.Timeline, entry => Assert.Contains(ReasonText.Sentence(entry), text, StringComparison.Ordinal));
    }

    [Fact]
    public void Html_Trip_NamesTheFaultAndWhatToCheck()
    {
        StartStudy study = Cases["trip"]();

        string text = XDocument.Parse(Html(study)).Root!.Value;

        FaultRow fault = FaultTable.RowOf(study.Result.Faults[0].Id);
        Assert.Contains(fault.Name, text, StringComparison.Ordinal);
        Assert.Contains(fault.Check, text, StringComparison.Ordinal);
        Assert.Contains("FAIL", text, StringComparison.Ordinal);
    }

    private static string Html(StartStudy study) => StartReport.Html(study, LoadStepScene.Of(study));

    // For looking at: set the variable to a folder.
    private static void Keep(string name, string html)
    {
        string? folder = Environment.GetEnvironmentVariable("STARTERCTL_KEEP_REPORTS");
        if (!string.IsNullOrEmpty(folder)) File.WriteAllText(Path.Combine(folder, name.Replace(' ', '-') + ".html"), html);
    }
}
