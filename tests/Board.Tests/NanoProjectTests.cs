using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>The project for the usual IDE holds the same sources and the same packages as the one that is built here.</summary>
public sealed class NanoProjectTests
{
    private static readonly XDocument Project = XDocument.Parse(Repository.Text("firmware/board/StarterCtl.Board.nfproj"));
    private static readonly XDocument Packages = XDocument.Parse(Repository.Text("firmware/board/packages.config"));
    private static readonly XDocument Central = XDocument.Parse(Repository.Text("Directory.Packages.props"));

    [Fact]
    public void Sources_AreAllOfCoreFirmwareAndBoard()
    {
        List<string> expected = [.. Repository.Sources("firmware/board"), .. Repository.Sources("core"), .. Repository.Sources("firmware")];
        IEnumerable<string> listed = Includes("Compile").Select(path => Path.GetRelativePath("/", Path.GetFullPath("/firmware/board/" + path)));

        Assert.True(listed.SequenceEqual(expected), "firmware/board/StarterCtl.Board.nfproj should list, each below core and firmware by its way from there and with its link:\n" + string.Join('\n', expected));
    }

    [Fact]
    public void Packages_AreOfTheVersionsNamedForTheWholeHouse()
    {
        Dictionary<string, string> central = Central.Descendants("PackageVersion").ToDictionary(item => item.Attribute("Include")!.Value, item => item.Attribute("Version")!.Value);
        List<XElement> shared = [.. Packages.Descendants("package").Where(item => central.ContainsKey(item.Attribute("id")!.Value))];

        Assert.Equal(4, shared.Count);
        Assert.All(shared, item => Assert.Equal(central[item.Attribute("id")!.Value], item.Attribute("version")!.Value));
    }

    [Fact]
    public void References_PointIntoThePackages()
    {
        IEnumerable<string> folders = Packages.Descendants("package").Select(item => $"{item.Attribute("id")!.Value}.{item.Attribute("version")!.Value}").Order();
        IEnumerable<string> hints = Elements("HintPath").Select(item => Regex.Match(item.Value, @"^\.\.\\\.\.\\packages\\([^\\]+)\\lib\\[\w.]+\.dll$").Groups[1].Value).Order();

        Assert.Equal(folders, hints);
    }

    private static IEnumerable<string> Includes(string item) => Elements(item).Select(found => found.Attribute("Include")!.Value.Replace('\\', '/'));

    private static IEnumerable<XElement> Elements(string name) => Project.Descendants().Where(element => element.Name.LocalName == name);
}
