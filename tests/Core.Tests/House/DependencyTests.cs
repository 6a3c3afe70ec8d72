using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Xml.Linq;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests.House;

/// <summary>Who may reference whom, read from the project files themselves.</summary>
public sealed class DependencyTests
{
    // A test project may reference what it is named for; every other project has a row here.
    private static readonly Dictionary<string, string[]> MayReference = new()
    {
        ["core/StarterCtl.Core"] = [],
        ["firmware/StarterCtl.Firmware"] = ["StarterCtl.Core"],
        ["firmware/board/StarterCtl.Board"] = ["StarterCtl.Core", "StarterCtl.Firmware", "StarterCtl.DeviceApi"],
        ["firmware/device-api/StarterCtl.DeviceApi"] = [],
        ["sim/Engine/StarterCtl.Engine"] = ["StarterCtl.Core", "StarterCtl.Firmware"],
        ["sim/Desk/StarterCtl.Desk"] = ["StarterCtl.Core", "StarterCtl.Firmware", "StarterCtl.Engine"],
        ["sim/Link/StarterCtl.Link"] = ["StarterCtl.Core", "StarterCtl.Firmware", "StarterCtl.Engine"],
        ["sim/Sweeps/StarterCtl.Sweeps"] = ["StarterCtl.Core", "StarterCtl.Engine"],
        ["sim/Trials/StarterCtl.Trials"] = ["StarterCtl.Core", "StarterCtl.Firmware", "StarterCtl.Engine", "StarterCtl.Link", "StarterCtl.Desk"],
        ["sim/App/StarterCtl.App"] = ["StarterCtl.Desk", "StarterCtl.Engine", "StarterCtl.Link", "StarterCtl.Sweeps", "StarterCtl.Trials"],
        ["sim/Benchmarks/StarterCtl.Benchmarks"] = ["StarterCtl.Core", "StarterCtl.Firmware", "StarterCtl.Engine", "StarterCtl.App", "StarterCtl.Sweeps", "StarterCtl.Trials"],
        ["tests/Firmware.Tests/StarterCtl.Firmware.Tests"] = ["StarterCtl.Firmware", "StarterCtl.Engine"],
        // The board's own sources are compiled in: its program is for no desktop.
        ["tests/Board.Tests/StarterCtl.Board.Tests"] = ["StarterCtl.Firmware"],
        // For the board's interpreter; the core's tests share their million ticks with it.
        ["tests/Interpreter/StarterCtl.Interpreter"] = ["StarterCtl.Firmware"],
        ["tests/Mutation/StarterCtl.Mutation"] = ["StarterCtl.Core.Tests"],
    };

    [Fact]
    public void Projects_References_AreThePermittedOnes()
    {
        List<string> wrong = [];
        foreach (string path in Repository.Files(".", "*.csproj"))
        {
            string project = path[..^".csproj".Length];
            string name = Path.GetFileName(project);
            string[]? permitted = MayReference.GetValueOrDefault(project);
            if (permitted == null && project.StartsWith("tests/", StringComparison.Ordinal) && name.EndsWith(".Tests", StringComparison.Ordinal)) permitted = [name[..^".Tests".Length]];
            if (permitted == null) wrong.Add($"{project} has no row in the table");
            else wrong.AddRange(References(path).Except(permitted).Select(reference => $"{project} references {reference}"));
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void Projects_References_AreRead()
    {
        Assert.Equal(["StarterCtl.Core"], References("firmware/StarterCtl.Firmware.csproj"));
        Assert.Equal(["StarterCtl.Desk", "StarterCtl.Engine", "StarterCtl.Link", "StarterCtl.Sweeps", "StarterCtl.Trials"], References("sim/App/StarterCtl.App.csproj"));
        Assert.Contains("StarterCtl.Core", References("sim/Engine/StarterCtl.Engine.csproj"));
    }

    [Theory]
    [InlineData("core/StarterCtl.Core.csproj")]
    [InlineData("firmware/StarterCtl.Firmware.csproj")]
    public void Projects_OfTheController_BuildForDeskAndBoardFromOneListOfSources(string path)
    {
        XDocument project = Project(path);

        Assert.Equal("net10.0;netnano1.0", project.Descendants("TargetFrameworks").Single().Value);
        // Only what is a project of its own is taken out, for both targets alike.
        string[] below = [.. Repository.Files(Path.GetDirectoryName(path)!, "*.csproj").Where(other => other != path).Select(other => $"{other.Split('/')[^2]}/**")];
        Assert.Equal(below, project.Descendants("Compile").SelectMany(item => item.Attribute("Remove")!.Value.Split(';')));
        Assert.All(project.Descendants("Compile"), item => Assert.Single(item.Attributes()));
        Assert.DoesNotContain(project.Descendants("ItemGroup"), group => group.Attribute("Condition") != null);
        Assert.Empty(project.Descendants("PackageReference"));
        Assert.Empty(project.Descendants("Reference"));
    }

    private static IEnumerable<string> References(string path) =>
        Project(path).Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));

    private static XDocument Project(string path) => XDocument.Parse(Repository.Text(path));
}
