using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>The drawings are sound, say in words what they show, load nothing, and are shown where a page says so.</summary>
public sealed class DrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Drawings => [.. Directory.EnumerateFiles(Note.Folder, "*.svg").Select(path => Path.GetFileName(path))];

    public static TheoryData<string> Pages => [.. Directory.EnumerateFiles(Note.Folder, "*.md").Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Drawing_HasTitleDescriptionAndWhiteGround(string drawing)
    {
        XElement root = XDocument.Load(Path.Combine(Note.Folder, drawing)).Root!;

        Assert.Equal(Svg + "svg", root.Name);
        Assert.InRange(root.Element(Svg + "title")!.Value.Length, 10, 80);
        Assert.InRange(root.Element(Svg + "desc")!.Value.Length, 100, 2000);
        XElement ground = root.Element(Svg + "rect")!;
        Assert.Equal(("#fff", root.Attribute("width")!.Value), (ground.Attribute("fill")!.Value, ground.Attribute("width")!.Value));
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Drawing_RefersToItselfOnly(string drawing)
    {
        XElement root = XDocument.Load(Path.Combine(Note.Folder, drawing)).Root!;
        string[] ids = [.. root.Descendants().Attributes("id").Select(id => "#" + id.Value)];

        Assert.All(root.DescendantsAndSelf().Attributes().Where(attribute => attribute.Name.LocalName == "href"), href => Assert.Contains(href.Value, ids));
        Assert.DoesNotMatch(@"url\(|@import|<image|<script|<foreignObject", root.ToString());
        Assert.Distinct(ids);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_ImagesAndLinks_AreThere(string page)
    {
        string[] targets = [.. Regex.Matches(Note.Text(page), @"\]\(([^)#:]+)\)").Select(match => match.Groups[1].Value)];

        Assert.All(targets, target => Assert.True(Path.Exists(Path.Combine(Note.Folder, target)), target));
    }

    [Fact]
    public void EveryDrawing_IsShownOnAPage()
    {
        string[] shown = [.. Directory.EnumerateFiles(Note.Folder, "*.md").SelectMany(path => Regex.Matches(File.ReadAllText(path), @"!\[[^]]+\]\(([^)]+)\)").Select(match => match.Groups[1].Value))];

        Assert.Empty(Directory.EnumerateFiles(Note.Folder, "*.svg").Select(path => Path.GetFileName(path)).Except(shown));
    }
}
