using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The fault-reaction matrix, cell by cell on the rig; and its page, which is made from the same table.</summary>
public sealed class ReactionTests
{
    private const string Page = "hardware-notes/04-fault-reactions.md";
    private const float PermittedPeakAmps = 1.05f * 700f;

    private static readonly Meeting[] Meetings = Enum.GetValues<Meeting>();

    private static readonly Dictionary<(string Input, string Failure), string[]> Rows = ReactionTable.Text.Split('\n')
        .Select(line => Array.ConvertAll(line.Split(" | "), cell => cell.Trim()))
        .ToDictionary(cells => (cells[0], cells[1]), cells => cells[2..]);

    public static TheoryData<string> Inputs => [.. Enum.GetNames<Input>()];

    [Theory]
    [MemberData(nameof(Inputs))]
    public void Input_EveryFailureInEveryMeeting_ComesToWhatTheTableSays(string input)
    {
        foreach (FailingInput failing in FailingInputs.All().Where(failing => failing.Input.ToString() == input))
        {
            string[] row = Rows[(input, failing.Failure.ToString())];
            foreach (Meeting meeting in Meetings)
            {
                ReactionCell cell = ReactionCell.Parse(row[(int)meeting], meeting);
                Reaction seen = Reaction.Of(failing, meeting, out float worstAmps);

                string where = $"{input}, {failing.Failure}, {meeting}: {seen}, {worstAmps:F0} A";
                Assert.True((cell.Outcome, cell.Fault, cell.Refusal) == (seen.Outcome, seen.Fault, seen.Refusal), where);
                Assert.True(seen.Milliseconds <= cell.DeadlineMilliseconds, where);
                Assert.True(cell.WorstAmps == (worstAmps > PermittedPeakAmps ? (int)MathF.Round(worstAmps) : 0), where);
            }
        }
    }

    [Fact]
    public void Rig_NothingFails_EveryMeetingEndsAsItShould()
    {
        FailingInput sound = new(Input.Reset, Failure.Stuck, "", rig => rig.Wiring = (_, _) => { });

        Assert.All(Meetings, meeting => Assert.Equal(ReactionCell.Undisturbed(meeting), Reaction.Of(sound, meeting, out _).Outcome));
    }

    [Fact]
    public void Table_HasEveryInputAndFailure_AndNoBlankCell()
    {
        IEnumerable<(string, string)> all =
            from input in Enum.GetNames<Input>() from failure in Enum.GetNames<Failure>() select (input, failure);

        Assert.Equal(all, Rows.Keys);
        Assert.Equal(all, FailingInputs.All().Select(failing => (failing.Input.ToString(), failing.Failure.ToString())));
        Assert.All(Rows.Values, row => Assert.Equal(Meetings.Length + 1, row.Length));
        Assert.All(Rows.Values, row => Assert.DoesNotContain(row, cell => cell.Length == 0));
    }

    [Theory]
    [InlineData("Speed", "ImpossibleRate", 3)]
    [InlineData("Speed", "Noise", 20)]
    public void ConfirmTime_OfSeveralPeriods_KeepsAPeakThatTheTableShowsWithoutIt(string input, string failure, int confirmMilliseconds)
    {
        FailingInput failing = FailingInputs.All().Single(failing => (failing.Input.ToString(), failing.Failure.ToString()) == (input, failure));

        Reaction seen = Reaction.Of(failing, Meeting.Starting, out float worstAmps, settings => settings.ConfirmMicroseconds = confirmMilliseconds * Bench.Millisecond);

        Assert.Equal(Outcome.Runs, seen.Outcome);
        Assert.InRange(worstAmps, 600f, PermittedPeakAmps);
    }

    [Fact]
    public void Page_IsTheTable()
    {
        string table = Sections();

        Assert.True(Repository.Text(Page).Contains(table, StringComparison.Ordinal), $"the tables of {Page} should be:\n{table}");
    }

    [Fact]
    public void Page_NamesTheSettingsThatItWasRunWith()
    {
        string settings = SettingLines();

        Assert.True(Repository.Text(Page).Contains(settings, StringComparison.Ordinal), $"the settings of {Page} should be:\n{settings}");
    }

    private static string Sections()
    {
        StringBuilder text = new();
        foreach (IGrouping<Input, FailingInput> group in FailingInputs.All().GroupBy(failing => failing.Input))
        {
            text.Append(CultureInfo.InvariantCulture, $"### {Spaced(group.Key.ToString(), true)}\n\n");
            text.Append("| failure | what is read | running | starting | ready, then start | running, then stop | tripped, then reset | why, and what to do |\n");
            text.Append("|---|---|---|---|---|---|---|---|\n");
            foreach (FailingInput failing in group)
            {
                string[] row = Rows[(failing.Input.ToString(), failing.Failure.ToString())];
                IEnumerable<string> cells = Meetings.Select(meeting => ReactionCell.Parse(row[(int)meeting], meeting).Words(meeting));
                text.Append(CultureInfo.InvariantCulture, $"| {Spaced(failing.Failure.ToString(), false)} | {failing.Reads} | {string.Join(" | ", cells)} | {row[^1]} |\n");
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd();
    }

    // Whatever differs from a set that nobody has touched.
    private static string SettingLines()
    {
        Settings settings = new ReactionRig().Settings;
        Settings untouched = new();
        StringBuilder text = new();
        foreach (SettingRow row in SettingTable.Rows)
        {
            int count = SettingAccess.Count(settings, row.Id);
            string[] numbers = [.. Enumerable.Range(0, count).Select(i => Number(settings, row, i))];
            bool isUntouched = SettingAccess.Count(untouched, row.Id) == count && numbers.SequenceEqual(Enumerable.Range(0, count).Select(i => Number(untouched, row, i)));
            if (!isUntouched) text.Append(CultureInfo.InvariantCulture, $"| `{row.Name}` | {string.Join(", ", numbers)} | {row.Unit} |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string Number(Settings settings, SettingRow row, int index) => row.IsWhole
        ? SettingAccess.GetWhole(settings, row.Id).ToString(CultureInfo.InvariantCulture)
        : SettingAccess.Get(settings, row.Id, index).ToString("G5", CultureInfo.InvariantCulture);

    private static string Spaced(string name, bool isHeading)
    {
        string words = string.Concat(name.Select((letter, at) => char.IsUpper(letter) && at > 0 ? " " + char.ToLowerInvariant(letter) : $"{letter}"));
        return isHeading ? words : words.ToLowerInvariant();
    }
}
