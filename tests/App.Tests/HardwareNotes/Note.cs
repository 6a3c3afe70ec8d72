using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Pages and drawings of the hardware notes, as files.</summary>
internal static class Note
{
    public static string Folder { get; } = Path.Combine(Repository.Root, "hardware-notes");

    /// <summary>File names of the pages by which a panel is built, 10 and above.</summary>
    public static IEnumerable<string> BuildingPages =>
        Directory.EnumerateFiles(Folder, "1?-*.md").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);

    public static string Text(string page) => File.ReadAllText(Path.Combine(Folder, page));

    /// <summary>What stands between fences of a language, one string for each block.</summary>
    public static IEnumerable<string> Blocks(string page, string language) =>
        Regex.Matches(Text(page), $"^```{language}\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline).Select(match => match.Groups[1].Value);

    /// <summary>A table as it stands on a page: four significant digits, cells parted by bars.</summary>
    public static string Table(string[] header, IEnumerable<object[]> rows) =>
        string.Join('\n', [Row(header), "|" + string.Concat(Enumerable.Repeat("---|", header.Length)), .. rows.Select(Row)]);

    /// <summary>Fails with the table as it should be where a page has another one.</summary>
    public static void AssertHas(string page, string table) =>
        Assert.True(Text(page).Contains(table, StringComparison.Ordinal), $"a table of {page} should be:\n{table}");

    private static string Row(object[] cells) => $"| {string.Join(" | ", cells.Select(Cell))} |";

    private static string Cell(object cell) => cell is double number ? Engine.Text.Number(number) : $"{cell}";
}
