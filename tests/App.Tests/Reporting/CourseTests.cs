using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Engine;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>What the report says of starts that went one way or another.</summary>
public sealed class CourseTests
{
    private const string Picture = "Picture the machine running on the full supply";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData(4)]
    [InlineData(16)]
    public void StartPlot_EveryThreshold_IsTiedToItsLineAndReadable(int stageCount)
    {
        StartStudy study = Studies.LineShaftOf(input => input with { Slack = Slack.RaiseSwitchingCurrent, StageCount = stageCount, SwitchingAmps = null });

        XElement figure = Figure(Page(study), "start-plot");

        foreach (XElement drawing in figure.Elements(Svg + "svg"))
        {
            XElement[] words = [.. drawing.Elements(Svg + "text").Where(text => Regex.IsMatch(text.Value, @"^\d+: "))];
            double[] lines = [.. words.Select(text => Tie(text)[1])], ends = [.. words.Select(text => Tie(text)[3])];
            Assert.Equal(stageCount, words.Length);
            double[] volts = [.. study.Design.Stages.Select(stage => stage.CutoutVolts)];
            double unitsPerVolt = (lines[^1] - lines[0]) / (volts[^1] - volts[0]);
            double letter = Number(words[0], "font-size");
            for (int i = 0; i < stageCount; i++)
            {
                Assert.StartsWith($"{i + 1}: {Text.Number(volts[i])}", words[i].Value, StringComparison.Ordinal);
                Assert.Equal(lines[0] + unitsPerVolt * (volts[i] - volts[0]), lines[i], 0.05);
                Assert.Equal(ends[i], Number(words[i], "y") - 0.35 * letter, 0.05);
                if (i > 0) Assert.True(ends[i - 1] - ends[i] > letter, $"words {i} and {i + 1} overlap");
            }

            if (stageCount == 4) Assert.All(lines.Zip(ends), pair => Assert.True(Math.Abs(pair.First - pair.Second) < letter));
        }
    }

    [Fact]
    public void SupplyDrop_ComputedStages_IsOneNumber() =>
        Assert.Contains("by 0.9 V at the 90 A that flow just before a cutout", Words(Studies.LineShaft.Value), StringComparison.Ordinal);

    [Fact]
    public void SupplyDrop_HandThresholds_IsThatOfEachStage()
    {
        StartStudy study = Studies.LineShaftOf(input => input with { SectionOhms = [0.6, 0.4, 0.25], CutoutVolts = [95, 150, 185], Slack = null, PeakAmps = null, SwitchingAmps = null });

        string words = Words(study);

        foreach (DesignedStage stage in study.Design.Stages)
        {
            Assert.Contains($"stage {stage.Stage} by {Text.Number(0.01 * stage.SwitchingAmps)} V at {Text.Number(stage.SwitchingAmps)} A", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Sections_Sums_StandInTheirOwnRow()
    {
        string[] alone = Row(Studies.LineShaft.Value, "Stages in the order", "armature alone"), total = Row(Studies.LineShaft.Value, "Stages in the order", "total");

        IReadOnlyList<DesignedStage> stages = Studies.LineShaft.Value.Design.Stages;
        Assert.Equal(["–", "–"], alone[^2..]);
        Assert.Equal(Text.Number(stages.Sum(stage => stage.SectionOhms)), total[1]);
        Assert.Equal([Text.Number(stages.Sum(stage => stage.ExpectedSeconds)!.Value), Text.Number(stages.Sum(stage => stage.EnergyJoules)!.Value / 1000)], total[^2..]);
    }

    [Fact]
    public void LoadStep_RunThatGotThere_GoesOnFromIt()
    {
        string words = Words(Studies.LineShaft.Value);

        Assert.Contains("The start is over", words, StringComparison.Ordinal);
        Assert.DoesNotContain(Picture, words, StringComparison.Ordinal);
    }

    [Fact]
    public void LoadStep_RunThatTripped_IsAPicture()
    {
        string words = Words(Studies.LineShaftOf(input => input, maximumStageSeconds: 0.3));

        Assert.DoesNotContain("The start is over", words, StringComparison.Ordinal);
        Assert.Contains(Picture, words, StringComparison.Ordinal);
        Assert.Contains("did not get there", words, StringComparison.Ordinal);
    }

    [Fact]
    public void LoadStep_EventDuringTheStart_IsAPicture()
    {
        string words = Words(Studies.LineShaftOf(input => input, events: [new RunEvent(1, 60, null, null)]));

        Assert.Contains(Picture, words, StringComparison.Ordinal);
        Assert.Contains("the load changed before that", words, StringComparison.Ordinal);
    }

    [Fact]
    public void LoadStep_RampOfTheLoad_SaysThatItIsTakenAtOnce()
    {
        RunEvent up = new(5, 85, null, null);

        Assert.Contains("to 85 N m, at once what the case’s event at 5 s does over 2 s.", Words(Studies.LineShaftOf(input => input, events: [up with { OverSeconds = 2 }])), StringComparison.Ordinal);
        Assert.Contains("to 85 N m, the step of the case’s event at 5 s.", Words(Studies.LineShaftOf(input => input, events: [up])), StringComparison.Ordinal);
    }

    [Fact]
    public void Plane_HeavierLoadFromTheBegin_IsTheOnlyLoadAndInThePicture()
    {
        XElement figure = Figure(Page(Studies.LineShaftOf(input => input, events: [new RunEvent(0, 300, null, null)])), "plane-plot");

        Assert.All(figure.Elements(Svg + "svg"), drawing => Assert.Equal(["load"], Loads(drawing)));
    }

    [Fact]
    public void Plane_LoadsOfTheRun_AreAllDrawnWithTheirTimes()
    {
        XElement figure = Figure(Page(Studies.LineShaftOf(input => input, events: [new RunEvent(1, 60, null, null), new RunEvent(6, 45, null, null), new RunEvent(7, 5000, null, null)])), "plane-plot");

        Assert.All(figure.Elements(Svg + "svg"), drawing => Assert.Equal(["load from 0\u00A0s, 6\u00A0s", "load from 1\u00A0s", "↑ load from 7\u00A0s"], Loads(drawing)));
    }

    // From 45 N m at 5 s to 85 N m at 7 s: it stands from then on. A ramp that another one overtakes, or the end, never stands.
    [Fact]
    public void Plane_RampOfTheLoad_IsDrawnOnItsWayAndStandsFromItsEnd()
    {
        RunEvent up = new(5, 85, null, null) { OverSeconds = 2 };
        StartStudy step = Studies.LineShaftOf(input => input), ramp = Studies.LineShaftOf(input => input, events: [up]);
        StartStudy late = Studies.LineShaftOf(input => input, events: [up with { OverSeconds = 4 }]), overtaken = Studies.LineShaftOf(input => input, events: [up, new RunEvent(6, 60, null, null)]);

        Assert.Equal(["load from 0\u00A0s", "load from 7\u00A0s"], FirstLoads(ramp));
        Assert.Equal(["load"], FirstLoads(late));
        Assert.Equal(["load from 0\u00A0s", "load from 6\u00A0s"], FirstLoads(overtaken));
        // One line more than the step's picture has: the load on its way.
        Assert.Equal(Lines(step) + 1, Lines(ramp));
        Assert.Contains("on its way from one to the next", Words(ramp), StringComparison.Ordinal);
        Assert.DoesNotContain("on its way from one to the next", Words(step), StringComparison.Ordinal);

        static string[] FirstLoads(StartStudy study) => Loads(Figure(Page(study), "plane-plot").Elements(Svg + "svg").First());
        static int Lines(StartStudy study) => Figure(Page(study), "plane-plot").Elements(Svg + "svg").First().Descendants(Svg + "polyline").Count();
    }

    [Theory]
    [InlineData(OperatorCommand.Stop)]
    [InlineData(OperatorCommand.EmergencyStop)]
    public void FinalSpeed_OfCoasting_IsNoSpeedToReach(OperatorCommand command)
    {
        StartStudy study = Studies.LineShaftOf(input => input, events: [new RunEvent(0, null, null, OperatorCommand.Start), new RunEvent(7.5, null, null, command)]);
        Assert.NotNull(study.Result.SecondsToSpeed);

        XDocument page = Page(study);

        XElement key = page.Descendants("dt").Single(term => term.Value.StartsWith("From the beginning to 95", StringComparison.Ordinal));
        Assert.Equal("–", key.ElementsAfterSelf("dd").First().Value);
        Assert.Equal("–", Row(study, "With and without", "Time")[^1]);
        Assert.DoesNotContain("95 % of the final speed", Plain(page.Root!.Value), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(8, 1_000)]
    [InlineData(8, 1_000_000)]
    [InlineData(3600, 1_000_000)]
    [InlineData(3600, 100_000_000)]
    public void HeatWithStarter_AnyDurationAndRecordPeriod_IsTheSame(double durationSeconds, long recordMicroseconds)
    {
        StartStudy study = Studies.LineShaftOf(input => input, durationSeconds: durationSeconds, recordMicroseconds: recordMicroseconds);
        StartStudy upToSpeed = Studies.LineShaftOf(input => input, events: [], durationSeconds: study.Result.SecondsToSpeed!.Value);

        string[] heat = Row(study, "With and without", "Heat in armature and brushes");

        // The books of a run that ends there, to the digits that are printed.
        Assert.EndsWith(" kJ", heat[^1], StringComparison.Ordinal);
        double joules = 1000 * double.Parse(heat[^1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(upToSpeed.Result.ArmatureJoules, joules, 0.001 * joules);
    }

    [Fact]
    public void StartPlot_LongRunWithASparseRecord_IsThatOfTheShortOne()
    {
        StartStudy sparse = Studies.LineShaftOf(input => input, durationSeconds: 3600, recordMicroseconds: 100_000_000);

        double[] expected = CurrentPath(Studies.LineShaft.Value), drawn = CurrentPath(sparse);

        // The end of the picture follows the time to speed, which an hour's history knows a little less sharply.
        Assert.Equal(expected.Length, drawn.Length);
        Assert.All(expected.Zip(drawn), pair => Assert.Equal(pair.First, pair.Second, 0.01));
    }

    // The longest line of the drawing's first one with many points: the current.
    private static double[] CurrentPath(StartStudy study) =>
    [
        .. Figure(Page(study), "start-plot").Elements(Svg + "svg").First().Descendants(Svg + "polyline").First(line => line.Attribute("points")!.Value.Length > 500).Attribute("points")!.Value
            .Split(' ', ',').Select(number => double.Parse(number, CultureInfo.InvariantCulture)),
    ];

    private static string[] Loads(XElement drawing) =>
        [.. drawing.Elements(Svg + "text").Select(text => text.Value).Where(words => words.Contains("load", StringComparison.Ordinal))];

    private static double[] Tie(XElement words)
    {
        XElement tie = words.ElementsBeforeSelf().Last();
        Assert.Equal("tie", (string?)tie.Attribute("class"));
        return [.. Regex.Matches(tie.Attribute("d")!.Value, @"[\d.]+").Select(number => double.Parse(number.Value, CultureInfo.InvariantCulture))];
    }

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    private static string[] Row(StartStudy study, string caption, string head)
    {
        XElement table = Page(study).Descendants("table").Single(table => table.Element("caption")!.Value.StartsWith(caption, StringComparison.Ordinal));
        XElement row = table.Descendants("tr").Single(row => row.Elements().First().Value == head);
        return [.. row.Elements("td").Select(cell => Plain(cell.Value))];
    }

    private static XElement Figure(XDocument page, string id) => page.Descendants("figure").Single(figure => (string?)figure.Attribute("id") == id);

    private static string Words(StartStudy study) => Plain(Page(study).Root!.Value);

    private static string Plain(string words) => words.Replace('\u00A0', ' ');

    private static XDocument Page(StartStudy study) => XDocument.Parse(StartReport.Html(study, LoadStepScene.Of(study)));
}
