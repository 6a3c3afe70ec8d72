using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using StarterCtl.App.Tests.Reporting;
using StarterCtl.Engine;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Every row under "what | sum | gives" of the building pages gives what it says, to four significant digits.</summary>
public sealed class NoteSumTests
{
    private const string Header = "| what | sum | gives |\n|---|---|---|\n";

    public static TheoryData<string, string> Rows
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach (string page in Note.BuildingPages)
            {
                foreach (string row in RowsOf(page)) rows.Add(page, row);
            }

            return rows;
        }
    }

    [Fact]
    public void SumsAreFound() => Assert.True(Rows.Count > 30, $"{Rows.Count} sums");

    [Theory]
    [MemberData(nameof(Rows))]
    public void Row_GivesWhatItsSumGives(string page, string row)
    {
        string[] cells = [.. row.Trim('|', ' ').Split('|').Select(cell => cell.Trim())];

        string given = Regex.Match(cells[2], @"^-?[0-9.]+").Value;

        Assert.True(given == Text.Number(Sums.Value(WithoutUnits(cells[1]))),
            $"{page}: {cells[0]}: {cells[1]} gives {Text.Number(Sums.Value(WithoutUnits(cells[1])))}, not {given}");
    }

    // "x" is the sign of multiplication; every other word is a unit. Whole numbers must not be divided as such.
    private static string WithoutUnits(string sum)
    {
        string factors = sum.Replace(" x ", " * ", StringComparison.Ordinal);
        string bare = Regex.Replace(factors, @"(?<![0-9.])[A-Za-z][A-Za-z0-9]*", "");
        return Regex.Replace(bare, @"(?<![0-9.])([0-9]+)(?![0-9.])", "$1.0");
    }

    private static IEnumerable<string> RowsOf(string page) =>
        Note.Text(page).Split(Header).Skip(1).SelectMany(rest => rest.Split('\n').TakeWhile(line => line.StartsWith('|')));
}
