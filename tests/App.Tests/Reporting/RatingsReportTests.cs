using System;
using System.Linq;
using System.Xml.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>The report's section on what the parts must bear.</summary>
public sealed class RatingsReportTests
{
    private static readonly CaseFile File = CaseFile.Parse("batch-mixer.toml", ShippedCases.Text("batch-mixer.toml"));
    private static readonly CaseRatings Ratings = CaseRatings.Of(CaseDesign.Of(File))!;
    private static readonly Lazy<StartStudy> Study = new(() => CaseRunner.Run(File));

    [Fact]
    public void Report_CaseThatAsksForRatings_HasEveryFigureAndTheirNumbers()
    {
        XDocument page = XDocument.Parse(StartReport.Html(Study.Value, LoadStepScene.Of(Study.Value), Ratings));

        XElement section = page.Descendants().Single(element => (string?)element.Attribute("id") == "ratings");
        Assert.Equal(["one-start-plot", "duty-plot", "time-current-plot"], section.Elements("figure").Select(figure => (string?)figure.Attribute("id")));
        string[] words = [.. section.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value)];
        Assert.Contains("winding, from cold", words);
        Assert.Contains("class 10A, from hot", words);
        Assert.Contains("the start", words);
        string text = section.Value;
        Assert.Contains($"{Ratings.Heat!.StartsPerHour} starts an hour are permitted", text, StringComparison.Ordinal);
        Assert.Contains("Class 10A:", text, StringComparison.Ordinal);
        Assert.Contains(Text.Number(Ratings.Contactors[0].RatedAmps), text, StringComparison.Ordinal);
        Assert.Contains("the maker's curve decides", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Report_CaseThatDoesNotAsk_HasNoSuchSection() =>
        Assert.DoesNotContain("id=\"ratings\"", StartReport.Html(Study.Value, LoadStepScene.Of(Study.Value)), StringComparison.Ordinal);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Report_Contents_ListsEverySectionThatIsThereInItsOrder(bool hasRatings)
    {
        XElement main = XDocument.Parse(StartReport.Html(Study.Value, LoadStepScene.Of(Study.Value), hasRatings ? Ratings : null)).Descendants("main").Single();

        string[] sections = [.. main.Elements("section").Select(section => (string?)section.Attribute("id")).OfType<string>().Select(id => "#" + id)];
        Assert.Equal(sections, main.Element("nav")!.Descendants("a").Select(link => (string?)link.Attribute("href")));
        Assert.Equal(hasRatings, sections.Contains("#ratings"));
    }

    // Both axes are decades: from 1 to 10 it is as far as from 10 to 100.
    [Fact]
    public void TimeCurrentPlot_Axes_AreDecades()
    {
        XDocument page = XDocument.Parse(StartReport.Html(Study.Value, LoadStepScene.Of(Study.Value), Ratings));
        XElement drawing = page.Descendants().Single(element => (string?)element.Attribute("id") == "time-current-plot").Elements().First();

        double[] Heights(string anchor, int coordinate, params string[] labels) =>
            [.. labels.Select(label => At(drawing.Descendants().Single(element => element.Value == label && (string?)element.Attribute("text-anchor") == anchor && element.Attribute("transform") != null), coordinate))];

        double[] seconds = Heights("end", 1, "0.1", "1", "10", "100", "1000"), amps = Heights("middle", 0, "50", "100", "500", "1000");
        Assert.All(seconds.Zip(seconds.Skip(1)), pair => Assert.Equal(seconds[0] - seconds[1], pair.First - pair.Second, 0.01));
        Assert.Equal(amps[2] - amps[0], amps[3] - amps[1], 0.01);
    }

    private static double At(XElement text, int coordinate) =>
        double.Parse(((string)text.Attribute("transform")!)["translate(".Length..^1].Split(',')[coordinate], System.Globalization.CultureInfo.InvariantCulture);
}
