using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>What the report says of each kind of machine; figures worked out here from the case.</summary>
public sealed class MachineKindReportTests
{
    private const double RadPerSec = Math.PI / 30;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Report_EveryKind_IsWellFormedAndFinite(string name)
    {
        string html = Html(Study(MachineCases.Text(name)));

        XDocument page = XDocument.Parse(html);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", html, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", html, StringComparison.Ordinal);
        string[] ids = [.. page.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.NotNull(Figure(page, "staircase"));
        Assert.NotNull(Figure(page, "regulation-plot"));
        Assert.Equal(name != "permanent magnet", page.Descendants("figure").Any(figure => (string?)figure.Attribute("id") == "magnetisation"));
    }

    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Staircase_EveryKind_HasTheDesignedCorners(string name)
    {
        StartStudy study = Study(MachineCases.Text(name));
        IReadOnlyList<DesignedStage> stages = study.Design.Stages;

        string[][] rows = Rows(Page(study), "The staircase in numbers");

        Assert.Equal(stages.Count + 1, rows.Length);
        for (int i = 0; i < stages.Count; i++)
        {
            double begins = i == 0 ? 0 : stages[i - 1].CutoutRpm!.Value;
            string[] expected = [Text.Number(stages[i].PeakAmps), Text.Number(begins), Text.Number(stages[i].SwitchingAmps), Text.Number(stages[i].CutoutRpm!.Value)];
            Assert.Equal(expected, rows[i][1..]);
        }

        Assert.Equal([Text.Number(study.Design.FinalPeakAmps), Text.Number(stages[^1].CutoutRpm!.Value)], rows[^1][1..3]);
    }

    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Sums_EveryKind_GiveTheNumbersThatTheyClaim(string name)
    {
        XDocument page = Page(Study(MachineCases.Text(name)));

        int checkedSums = 0;
        foreach (XElement step in page.Descendants("div").Where(div => (string?)div.Attribute("class") == "sums").Descendants("p"))
        {
            foreach (Match sum in Regex.Matches(step.Value, @"= \(?((?:[\d.]+)(?: [−·/+] \(?[\d.]+\)?)+) = ([\d.]+)"))
            {
                double claimed = double.Parse(sum.Groups[2].Value, CultureInfo.InvariantCulture);
                Assert.Equal(claimed, Sums.Value(sum.Groups[1].Value), Math.Abs(claimed) * 0.004 + 0.15);
                checkedSums++;
            }
        }

        Assert.True(checkedSums > 10, $"{checkedSums} sums");
    }

    // The curve's own point at 1.2 A: k = 218 V at 1060 r/min, so 218 V of supply less brushes are 1060 r/min without load.
    [Fact]
    public void Regulation_SeparatelyExcited_IsStiff()
    {
        string text = MachineCases.SeparatelyExcited.Replace("\"110 V\"", "\"120 V\"", StringComparison.Ordinal);
        text = text.Replace("curve-speed = \"1000 rpm\"", "curve-speed = \"1060 rpm\"", StringComparison.Ordinal);

        string words = Words(Study(text));

        double full = (218 - 40 * 0.35) / 218 * 1060;
        Assert.Contains("Stiff.", words, StringComparison.Ordinal);
        Assert.Contains($"falls by {Text.Number(1060 - full)} r/min, {Text.Number((1060 - full) / 10.60)} %, from 1060 r/min to {Text.Number(full)} r/min", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Regulation_PermanentMagnet_IsStiff()
    {
        string words = Words(Study(MachineCases.PermanentMagnet));

        Assert.Contains($"from {Text.Number(48 / 0.14 / RadPerSec)} r/min to {Text.Number((48 - 12 * 0.3) / 0.14 / RadPerSec)} r/min", words, StringComparison.Ordinal);
        Assert.Contains("weakens permanent magnets", words, StringComparison.Ordinal);
    }

    // k = (6 V + 2.99 V/A I) / 750 r/min makes a quadratic of every torque.
    [Fact]
    public void Regulation_Series_IsSoftAndWarnsOfNoLoad()
    {
        StartStudy study = Study(StraightCurve(MachineCases.Series, "160 A", "484.4 V"));
        double a = 6 / (750 * RadPerSec), b = 478.4 / 160 / (750 * RadPerSec);
        double AmpsFor(double torque) => (-a + Math.Sqrt(a * a + 4 * b * torque)) / (2 * b);
        double RpmAt(double amps) => (218 - amps * 0.32) / (a + b * amps) / RadPerSec;
        double light = AmpsFor(0.1 * 64 * (a + b * 64));

        string words = Words(study);

        Assert.Contains($"turns {Text.Number(RpmAt(64))} r/min; at a tenth of that torque {Text.Number(RpmAt(light))} r/min", words, StringComparison.Ordinal);
        Assert.Contains($"needs {Text.Number(light)} A instead of 64 A", words, StringComparison.Ordinal);
        Assert.Contains($"would balance the supply only at {Text.Number(218 / a / RadPerSec)} r/min", words, StringComparison.Ordinal);
        Assert.Contains("A series machine without load runs away.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("field current, A", words, StringComparison.Ordinal);
    }

    // One per cent less speed by the quadratic of V - Vb - I R = k(I) w, not by constant flux.
    [Fact]
    public void LoadStep_Series_UsesTheSlopeOfItsCurve()
    {
        StartStudy study = Study(StraightCurve(MachineCases.Series, "160 A", "484.4 V"));
        double a = 6 / (750 * RadPerSec), b = 478.4 / 160 / (750 * RadPerSec);
        double before = (-a + Math.Sqrt(a * a + 4 * b * 30)) / (2 * b), speed = 0.99 * (218 - before * 0.32) / (a + b * before);
        double slower = (218 - a * speed) / (0.32 + b * speed);

        string words = Words(study);

        Assert.Contains($"{Text.Number(slower - before)} A more current and {Text.Number(slower * (a + b * slower) - 30)} N m more torque", words, StringComparison.Ordinal);
        Assert.Contains("with the current and with the flux that it strengthens", words, StringComparison.Ordinal);
    }

    // k = (6 V + 132.5 V/A x) / 900 r/min with x = If + 0.005 Ia.
    [Fact]
    public void Regulation_Compound_LiesBetween()
    {
        double KAt(double amps) => (6 + 397.5 / 3 * (220 / 180.0 + 0.005 * amps)) / (900 * RadPerSec);
        double none = 218 / KAt(0) / RadPerSec, full = (218 - 52 * 0.3) / KAt(52) / RadPerSec;

        string words = Words(Study(StraightCurve(MachineCases.Compound, "3 A", "403.5 V")));

        Assert.Contains("Between shunt and series.", words, StringComparison.Ordinal);
        Assert.Contains($"falls by {Text.Number(none - full)} r/min", words, StringComparison.Ordinal);
        Assert.Contains($"from {Text.Number(none)} r/min to {Text.Number(full)} r/min", words, StringComparison.Ordinal);
        Assert.Contains("Never open the shunt field under power.", words, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Source", "CHK-07")]
    public void Chain_ConstructionInTheCase_GoesFromOneConductorToThePrintedFigures()
    {
        string words = Words(Study("""
            [supply]
            voltage = "440 V"

            [motor]
            kind = "separately excited"
            rated-current = "50 A"
            armature-resistance = "0.28 ohm"
            inertia = "1 kg m2"

            [motor.construction]
            poles = 4
            conductors = 888
            parallel-paths = 2
            flux-per-pole = "23 mWb"

            [load]
            constant-torque = "150 N m"

            [starter]
            peak-current = "100 A"
            switching-current = "60 A"

            [run]
            duration = "5 s"
            """));

        double rpm = 426 * 60 * 2 / (4 * 888 * 0.023);
        Assert.Equal(626, rpm, 0.5);
        Assert.Contains($"at {Text.Number(rpm)} r/min and 50 A", words, StringComparison.Ordinal);
        Assert.Contains($"4 · 0.023 · {Text.Number(rpm)} / 60 = {Text.Number(426.0 / 444)} V", words, StringComparison.Ordinal);
        Assert.Contains($"444 · {Text.Number(426.0 / 444)} = 426 V", words, StringComparison.Ordinal);
        Assert.DoesNotContain("The case gives no construction data", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Chain_NoConstruction_IsReadBackwards()
    {
        string words = Words(Study(MachineCases.PermanentMagnet));

        double speed = (48 - 12 * 0.3) / 0.14;
        Assert.Contains("The case gives no construction data", words, StringComparison.Ordinal);
        Assert.Contains($"0.14 · {Text.Number(speed)} = 44.4 V", words, StringComparison.Ordinal);
        Assert.Contains("44.4 · 12 = 532.8 W", words, StringComparison.Ordinal);
        Assert.Contains($"= {Text.Number(2 * Math.PI * 0.14)} Wb", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("press-drive.toml", "least 1.4 A")]
    [InlineData("crane-travel.toml", null)]
    public void StartPlot_FieldWinding_HasItsCurrentAndItsLeast(string name, string? least)
    {
        XElement figure = Figure(Page(Study(ShippedCases.Text(name))), "start-plot");

        Assert.All(figure.Elements(Svg + "svg"), drawing =>
        {
            string[] words = [.. drawing.Elements(Svg + "text").Select(text => text.Value.Replace('\u00A0', ' '))];
            Assert.Equal(least != null, words.Contains("field current, A"));
            if (least != null) Assert.Contains(least, words);
        });
    }

    // The books of a run that ends when the speed is reached.
    [Fact]
    public void HeatWithStarter_ShortShunt_CountsItsSeriesWinding()
    {
        StartStudy study = Study(MachineCases.ShortShunt);
        string duration = study.Result.SecondsToSpeed!.Value.ToString("F3", CultureInfo.InvariantCulture);
        StartStudy upToSpeed = Study(MachineCases.ShortShunt.Replace("duration = \"6 s\"", $"duration = \"{duration} s\"", StringComparison.Ordinal));

        string[] heat = Rows(Page(study), "With and without").Single(row => row[0] == "Heat in armature and brushes");

        double joules = 1000 * double.Parse(heat[^1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(upToSpeed.Result.ArmatureJoules, joules, 0.002 * joules);
    }

    private static string StraightCurve(string text, string lastAmps, string lastVolts)
    {
        string kept = MachineCases.Without(text, "curve-currents", "curve-emfs");
        return kept.Replace("[field]", $"[field]\ncurve-currents = [\"0 A\", \"{lastAmps}\"]\ncurve-emfs = [\"6 V\", \"{lastVolts}\"]", StringComparison.Ordinal);
    }

    private static StartStudy Study(string text) => CaseRunner.Run(CaseFile.Parse("case.toml", text), null, TestContext.Current.CancellationToken);

    private static string Html(StartStudy study) => StartReport.Html(study, LoadStepScene.Of(study));

    private static XDocument Page(StartStudy study) => XDocument.Parse(Html(study));

    private static string Words(StartStudy study) => Page(study).Root!.Value.Replace('\u00A0', ' ');

    private static XElement Figure(XDocument page, string id) => page.Descendants("figure").Single(figure => (string?)figure.Attribute("id") == id);

    private static string[][] Rows(XDocument page, string caption)
    {
        XElement table = page.Descendants("table").Single(table => table.Element("caption")!.Value.StartsWith(caption, StringComparison.Ordinal));
        return [.. table.Element("tbody")!.Elements("tr").Select(row => row.Elements().Select(cell => cell.Value.Replace('\u00A0', ' ')).ToArray())];
    }
}
