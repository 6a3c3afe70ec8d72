using System.Collections.Generic;
using System.Linq;
using Spectre.Console;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>Verdicts as people read them.</summary>
internal static class TrialsTable
{
    /// <summary>Prints every trial with what was seen, and how many ended how.</summary>
    public static void Show(IAnsiConsole console, IReadOnlyList<TrialResult> results, VerdictCounts counts)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("trial"));
        table.AddColumn(Tables.Word("verdict"));
        table.AddColumn(new TableColumn("seen").Padding(2, 0));
        foreach (TrialResult result in results) table.AddRow(Markup.Escape(result.Trial.Name), VerdictMarkup(result), Markup.Escape(Seen(result)));
        console.Write(table);
        console.MarkupLineInterpolated($"[bold]{counts.Trials} {(counts.Trials == 1 ? "trial" : "trials")}: {Parts(counts)}[/]");
    }

    private static string VerdictMarkup(TrialResult result)
    {
        string word = VerdictText.Word(result.Verdict);
        return result.Verdict switch
        {
            TrialVerdict.Pass => $"[green]{word}[/]",
            TrialVerdict.Fail => $"[red]{word.ToUpperInvariant()}[/]",
            _ => $"[yellow]{word}[/]",
        };
    }

    private static string Seen(TrialResult result)
    {
        if (result.Last is not TrialAttempt last) return "";
        string seen = last.Verdict == TrialVerdict.Pass ? string.Join('\n', last.Outcomes.Select(Seen)) : last.Why;
        return result.Attempts.Count > 1 ? $"attempt {Text.Number(result.Attempts.Count)}: {seen}" : seen;
    }

    private static string Seen(Outcome outcome) => $"{outcome.Name}: {outcome.Seen}";

    private static string Parts(VerdictCounts counts)
    {
        (int Count, string Word)[] parts =
        [
            (counts.Passed, "passed"), (counts.Failed, "failed"), (counts.Errors, counts.Errors == 1 ? "error" : "errors"), (counts.NotRun, "not run"), (counts.Aborted, "aborted"), (counts.Retried, "tried more than once"),
        ];
        return string.Join(", ", parts.Where(part => part.Count > 0).Select(part => $"{part.Count} {part.Word}"));
    }
}
