using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace StarterCtl.Mutation;

/// <summary>The page of a run.</summary>
internal static class Report
{
    /// <summary>Writes it beside its place and renames it when it is whole.</summary>
    /// <param name="path">Its place.</param>
    /// <param name="chosen">Mutants to run; those that have not run yet are counted and not judged.</param>
    /// <param name="leftOut">Mutants that do not compile.</param>
    /// <param name="notes">Lines about the run.</param>
    internal static void Write(string path, IReadOnlyList<Mutant> chosen, IReadOnlyList<Mutant> leftOut, IEnumerable<string> notes)
    {
        List<Mutant> mutants = [.. chosen.Where(mutant => mutant.Fate != Fate.NotRun)];
        StringBuilder page = new();
        page.Append("# Mutants of the core\n\n").Append(Score(mutants)).Append("\n\n");
        foreach (string note in notes) page.Append("- ").Append(note).Append('\n');
        if (mutants.Count < chosen.Count) page.Append(CultureInfo.InvariantCulture, $"- not finished: {chosen.Count - mutants.Count} have not run yet\n");
        page.Append("\n| file | mutants | killed | not killed | score |\n|---|---|---|---|---|\n");
        foreach (IGrouping<string, Mutant> file in mutants.GroupBy(mutant => mutant.File))
        {
            int killed = file.Count(IsKilled);
            page.Append(CultureInfo.InvariantCulture, $"| {file.Key} | {file.Count()} | {killed} | {file.Count() - killed} | {100.0 * killed / file.Count():F1} % |\n");
        }

        List(page, "Survivors", mutants.Where(mutant => mutant.Fate == Fate.Survived));
        List(page, "Not reached by any test", mutants.Where(mutant => mutant.Fate == Fate.NotReached));
        List(page, "Failed once and passed once, counted as not killed", mutants.Where(mutant => mutant.Fate == Fate.Unsure));
        List(page, "Killed by the time limit", mutants.Where(mutant => mutant.Fate == Fate.TimedOut));
        List(page, "Left out, do not compile", leftOut);

        page.Append("\n## What killed the others\n\n");
        foreach (IGrouping<string, Mutant> run in mutants.Where(mutant => mutant.Fate == Fate.Killed).GroupBy(mutant => mutant.LastRun).OrderByDescending(run => run.Count()))
        {
            page.Append(CultureInfo.InvariantCulture, $"- {run.Key}: {run.Count()}\n");
        }

        File.WriteAllText(path + ".part", page.ToString());
        File.Move(path + ".part", path, true);
    }

    /// <summary>The score in one sentence.</summary>
    internal static string Score(IReadOnlyList<Mutant> mutants)
    {
        int killed = mutants.Count(IsKilled);
        int timedOut = mutants.Count(mutant => mutant.Fate == Fate.TimedOut);
        int unsure = mutants.Count(mutant => mutant.Fate == Fate.Unsure);
        int notReached = mutants.Count(mutant => mutant.Fate == Fate.NotReached);
        return string.Create(CultureInfo.InvariantCulture, $"{100.0 * killed / Math.Max(1, mutants.Count):F1} % of {mutants.Count} mutants killed: {killed - timedOut} by a test, {timedOut} by the time limit; {mutants.Count - killed - notReached - unsure} survived, {notReached} were not reached, {unsure} failed only once.");
    }

    private static void List(StringBuilder page, string title, IEnumerable<Mutant> mutants)
    {
        page.Append("\n## ").Append(title).Append("\n\n");
        if (!mutants.Any()) page.Append("None.\n");
        foreach (Mutant mutant in mutants)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {mutant.File}:{mutant.Line} #{mutant.Number} `{mutant.Original}` -> `{mutant.Mutated}`\n");
        }
    }

    private static bool IsKilled(Mutant mutant) => mutant.Fate is Fate.Killed or Fate.TimedOut;
}
