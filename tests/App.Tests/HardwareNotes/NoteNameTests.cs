using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Text.RegularExpressions;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>What the building pages name in backticks is there in the code, and what they give as a piece of a case is one.</summary>
public sealed class NoteNameTests
{
    private static readonly HashSet<string> Known =
    [
        .. CaseKeys.All.Select(key => key.Path),
        .. SettingTable.Rows.Select(row => row.Name),
        .. FaultTable.Rows.Skip(1).Select(row => row.Name),
        .. Enum.GetValues<Phase>().Select(PhaseText.Name),
        .. Enum.GetValues<Refusal>().Where(refusal => refusal != Refusal.None).Select(RefusalText.List),
        .. Members(typeof(Readings)),
        .. Members(typeof(Outputs)),
        .. CommandsOn(["design", "run", "report"]),
        .. ShippedNames(),
    ];

    public static TheoryData<string> Pages => [.. Note.BuildingPages];

    [Fact]
    public void Pages_Are10To16() =>
        Assert.Equal(["10", "11", "12", "13", "14", "15", "16"], Note.BuildingPages.Select(page => page[..2]));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_NamesInBackticks_AreInTheCode(string page)
    {
        string prose = Regex.Replace(Note.Text(page), "^```.*?^```$", "", RegexOptions.Multiline | RegexOptions.Singleline);
        string[] named = [.. Regex.Matches(prose, "`([^`]+)`").Select(match => match.Groups[1].Value)];

        Assert.NotEmpty(named);
        Assert.DoesNotContain(named, name => !Known.Contains(name));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_PiecesOfCases_HaveKnownKeysAndAllowedValues(string page) =>
        Assert.All(Note.Blocks(page, "toml"), block => CaseFile.Parse(page, block));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_BeginsWithCautions_AndDefersToCodesAndLicence(string page)
    {
        string text = Note.Text(page);

        Assert.Matches("^# [0-9]+\\. [^\n]+\n[^#]*## Cautions first\n", text);
        Assert.Contains("Local codes and a licensed electrician or engineer decide", text, StringComparison.Ordinal);
    }

    [Fact]
    public void FolderPage_ListsEveryPage() =>
        Assert.All(Note.BuildingPages, page => Assert.Contains($"]({page})", Note.Text("README.md"), StringComparison.Ordinal));

    private static IEnumerable<string> Members(Type type) =>
        type.GetFields(BindingFlags.Public | BindingFlags.Instance).Select(field => $"{type.Name}.{field.Name}");

    private static IEnumerable<string> ShippedNames() =>
        System.IO.Directory.EnumerateFiles(System.IO.Path.Combine(Repository.Root, "sim", "cases"), "*.toml").Select(path => System.IO.Path.GetFileName(path));

    private static IEnumerable<string> CommandsOn(string[] verbs) =>
        verbs.SelectMany(verb => ShippedNames().Select(name => $"starterctl {verb} sim/cases/{name}").Append($"starterctl {verb}"));
}
