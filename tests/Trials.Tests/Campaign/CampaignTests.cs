using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Running;
using Xunit;

namespace StarterCtl.Trials.Tests.Campaign;

/// <summary>The shipped trials pass on the simulator, and the page beside them says what they cover.</summary>
public sealed class CampaignTests(Campaign campaign) : IClassFixture<Campaign>
{
    private static readonly string[] Columns = ["at start", "mid-start", "running", "stopped"];

    [Fact]
    public void EveryShippedTrial_Passes()
    {
        string[] others = [.. campaign.Results.Where(result => result.Verdict != TrialVerdict.Pass).Select(result => $"{result.Trial.Name}: {VerdictText.Word(result.Verdict)}\n{result.Last?.Why}")];

        Assert.True(others.Length == 0, string.Join('\n', others));
        Assert.True(campaign.Trials.Count >= 40, $"{campaign.Trials.Count} trials");
    }

    [Fact]
    public void Trials_RunOnThreeKindsOfMachine_WithNoiseAndBounce()
    {
        Assert.Equal(["permanent magnet", "separately excited", "series"], campaign.Trials.Select(trial => trial.Case.Text(CaseKeys.MotorKind)).Distinct().Order(StringComparer.Ordinal));
        Assert.All(campaign.Trials, trial =>
        {
            Assert.True(trial.Case.Number(CaseKeys.SensorsCurrentNoise) > 0 && trial.Case.Number(CaseKeys.SensorsVoltageNoise) > 0 && trial.Case.Number(CaseKeys.SensorsSpeedNoise) > 0, trial.Name);
            Assert.True(trial.Case.Count(CaseKeys.ContactorsBounceCount) > 0, trial.Name);
        });
    }

    // It takes as long as it says, so that only its file is looked at here.
    [Fact]
    public void TrialByTheClock_IsTenMinutesInStepsOf1Ms_AndNoPartOfTheCampaign()
    {
        Trial trial = Assert.Single(TrialFile.Read(Path.Combine(Campaign.Folder, "real-time", "ten-minutes.trial.toml")));

        Assert.Equal((600.0, 1000), (trial.Job.Run.Setup.DurationSeconds, trial.Job.Run.Setup.PeriodMicroseconds));
        Assert.DoesNotContain(campaign.Trials, other => other.Name == trial.Name);
    }

    [Fact]
    public void Page_HasTheCoverageThatTheRunsShow()
    {
        string table = string.Join('\n', FaultTable.Rows.Skip(1).Select(row => Row(row)));
        string page = File.ReadAllText(Path.Combine(Campaign.Folder, "README.md"));

        Assert.True(page.Contains(table, StringComparison.Ordinal), "the table of sim/trials/README.md should be:\n" + table);
    }

    [Fact]
    public void Row_OfAFault_IsNamedByWhatTheDriveWasDoing() => Assert.All(campaign.Trials, trial =>
    {
        PhaseAtFault seen = campaign.FaultOf(trial);
        if (seen.Fault != FaultId.None) Assert.EndsWith(" " + Columns[seen.Column], trial.Row, StringComparison.Ordinal);
    });

    [Fact]
    public void Page_NamesEveryFileOfTheCampaign()
    {
        string page = File.ReadAllText(Path.Combine(Campaign.Folder, "README.md"));

        Assert.All(campaign.Trials.Select(trial => Path.GetFileName(trial.FileName)).Distinct(), name => Assert.Contains($"`{name[..^".trial.toml".Length]}`", page, StringComparison.Ordinal));
    }

    // Which trials raised the fault first, by what the drive was doing: taken from the runs, not from their names.
    private string Row(FaultRow row)
    {
        string[] cells = [.. Enumerable.Range(0, Columns.Length).Select(column => Cell(row.Id, column))];
        bool isWhole = cells.All(cell => cell.Length > 0);
        string reason = isWhole ? "" : Uncovered.Reasons.GetValueOrDefault(row.Id, "REASON MISSING");
        Assert.False(isWhole && Uncovered.Reasons.ContainsKey(row.Id), $"{row.Name} is covered in every phase and needs no reason");
        return $"| {row.Name} | {string.Join(" | ", cells)} | {reason} |";
    }

    private string Cell(FaultId fault, int column)
    {
        IEnumerable<string> found = campaign.Trials
            .Where(trial => campaign.FaultOf(trial).Fault == fault && campaign.FaultOf(trial).Column == column)
            .GroupBy(trial => Path.GetFileName(trial.FileName)[..^".trial.toml".Length])
            .Select(file => $"`{file.Key}`: {string.Join(", ", file.Select(trial => trial.Row.Split(' ')[0]).Distinct())}");
        return string.Join("; ", found);
    }
}
