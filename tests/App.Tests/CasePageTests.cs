using System;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The page of all keys beside the shipped cases says what the code knows.</summary>
public sealed class CasePageTests
{
    [Fact]
    public void CasePage_ListsEveryKeyAsTheCodeKnowsIt()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "sim", "cases", "README.md"));
        string table = string.Join('\n', CaseKeys.All.Select(Row));

        Assert.True(page.Contains(table, StringComparison.Ordinal), "the table of sim/cases/README.md should be:\n" + table);
    }

    [Fact]
    public void ShippedCases_InTheProgram_AreTheFilesInTheRepositoryAndOnThePage()
    {
        string folder = Path.Combine(Repository.Root, "sim", "cases"), page = File.ReadAllText(Path.Combine(folder, "README.md"));

        Assert.All(Directory.EnumerateFiles(folder, "*.toml").Select(path => Path.GetFileName(path)), name =>
        {
            Assert.Equal(File.ReadAllText(Path.Combine(folder, name)), ShippedCases.Text(name));
            Assert.Contains($"]({name})", page, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void CasePage_ListsEveryQuantityThatMayHaveATolerance()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "sim", "cases", "README.md"));
        string list = string.Join('\n', PlantKeys.All.GroupBy(key => key.Table).Select(table => $"- `[{table.Key}]`: {string.Join(", ", table.Select(key => $"`{key.Name}`"))}"));

        Assert.True(page.Contains(list + "\n\n", StringComparison.Ordinal), "the list of tolerances in sim/cases/README.md should be:\n" + list);
    }

    private static string Row(CaseKey key) =>
        $"| `{key.Path}` | {key.Summary} | {key.Allowed.Replace("|", "\\|", StringComparison.Ordinal)} | {(key.DefaultText is string text ? $"`{text}`" : "")} |";
}
