using System;
using System.Linq;
using System.Xml.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>What the report says about field, brake and trips.</summary>
public sealed class FaultReportTests
{
    [Fact]
    public void Report_ExpectedTrip_IsShownInWordsPictureAndTimeline()
    {
        string html = Report("field-loss.toml");

        Assert.Contains("PASS: it tripped as the case expects", html, StringComparison.Ordinal);
        Assert.Contains("Trip at 4.05\u00A0s: field lost", System.Net.WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.Contains("Solid upright line: the trip, field lost at", html, StringComparison.Ordinal);
        Assert.Contains("read then: supply", html, StringComparison.Ordinal);
        Assert.Contains("Magnetisation as the controller knows it", html, StringComparison.Ordinal);
        Assert.Contains("Field inductance", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Report_Braking_HasItsHeatInTheBalance()
    {
        string html = Report("brake-stop.toml");

        Assert.Contains("Heat in the brake resistor", html, StringComparison.Ordinal);
        Assert.Contains("PASS: every limit holds", html, StringComparison.Ordinal);
        Assert.Contains("<td>Braking</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Report_EveryShippedCase_IsWellFormedAndHasItsNumbers() =>
        Assert.All(
            typeof(ShippedCases).Assembly.GetManifestResourceNames().Where(name => name.StartsWith("cases/", StringComparison.Ordinal)).Select(name => name["cases/".Length..]),
            name =>
            {
                string html = Report(name);
                XDocument.Parse(html.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
                Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
            });

    private static string Report(string name)
    {
        StartStudy study = CaseRunner.Run(CaseFile.Parse(name, ShippedCases.Text(name)), null, TestContext.Current.CancellationToken);
        return StartReport.Html(study, LoadStepScene.Of(study));
    }
}
