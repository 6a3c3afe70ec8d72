using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Spectre.Console;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Tables;

/// <summary>How the link to a board did.</summary>
internal static class LinkFiguresTable
{
    private const int BarWidth = 40;

    /// <summary>Prints the figures of every trial that had a link, how often which latency occurred in all of them, and how late steps by the clock were.</summary>
    public static void Show(IAnsiConsole console, IReadOnlyList<TrialResult> results)
    {
        (string Name, LinkFigures Link)[] linked = [.. results.Where(result => result.Last?.Report?.Link != null).Select(result => (result.Trial.Name, result.Last!.Report!.Link!))];
        if (linked.Length == 0) return;
        Table table = Tables.New();
        table.AddColumn(Tables.Word("link"));
        foreach (string head in new[] { "exchanges", "missed", "lost", "least", "median", "99 %", "largest, ms" }) table.AddColumn(Tables.Number(head));
        foreach ((string name, LinkFigures link) in linked)
        {
            table.AddRow(
                Markup.Escape(name), Whole(link.Exchanges), Whole(link.MissedDeadlines), Whole(link.LostFrames), Milliseconds(link.LeastLatencySeconds),
                Milliseconds(link.MedianLatencySeconds), Milliseconds(link.P99LatencySeconds), Milliseconds(link.LargestLatencySeconds));
        }

        console.Write(table);
        ShowHistogram(console, "latency up to, ms", "exchanges", linked.SelectMany(entry => entry.Link.Histogram));
        ShowHistogram(console, "step late by up to, ms", "steps", linked.SelectMany(entry => entry.Link.StepsLate));
    }

    private static void ShowHistogram(IAnsiConsole console, string head, string what, IEnumerable<LatencyClass> entries)
    {
        LatencyClass[] classes = [.. entries.GroupBy(entry => entry.UpToSeconds).OrderBy(group => group.Key)
            .Select(group => new LatencyClass(group.Key, group.Sum(entry => entry.Count)))];
        if (classes.Length == 0) return;
        long most = classes.Max(entry => entry.Count);
        Table table = Tables.New();
        table.AddColumn(Tables.Number(head));
        table.AddColumn(Tables.Number(what));
        table.AddColumn(new TableColumn("").NoWrap());
        foreach (LatencyClass entry in classes)
        {
            // Whatever occurred at all shows.
            int bar = entry.Count == 0 ? 0 : Math.Max(1, (int)(BarWidth * entry.Count / most));
            table.AddRow(Milliseconds(entry.UpToSeconds), Whole(entry.Count), new string('#', bar));
        }

        console.Write(table);
    }

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Milliseconds(double seconds) => (seconds * 1000).ToString("0.000", CultureInfo.InvariantCulture);
}
