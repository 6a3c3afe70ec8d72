using System;
using System.IO;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The catalogues of the hardware notes are the code's own tables.</summary>
public sealed class CataloguePageTests
{
    [Fact]
    public void SettingsPage_IsTheTableOfSettings() =>
        AssertHas("02-settings.md", string.Join('\n', SettingTable.Rows.Select(SettingLine)));

    [Fact]
    public void FaultsPage_IsTheTableOfFaults() =>
        AssertHas("03-faults.md", string.Join('\n', FaultTable.Rows.Skip(1).Select(FaultLine)));

    private static void AssertHas(string page, string table)
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "hardware-notes", page));
        Assert.True(text.Contains(table, StringComparison.Ordinal), $"the table of {page} should be:\n{table}");
    }

    private static string SettingLine(SettingRow row)
    {
        string range = $"{(row.IncludesLowest ? "" : "above ")}{Text.Number(row.Lowest)} to {Text.Number(row.Highest)}{(row.IsWhole ? ", whole" : "")}";
        return $"| {(int)row.Id} | `{row.Name}` | {row.Unit} | {range} | {(row.DefaultText.Length == 0 ? "must be set" : row.DefaultText)} | {row.Reason} |";
    }

    private static string FaultLine(FaultRow row)
    {
        string severity = row.Severity == FaultSeverity.MayBeLive ? "**may be live**" : "off";
        return $"| {(int)row.Id} | {row.Name} | {severity} | {row.Cause} | {row.Done} | {row.Check} |";
    }
}
