using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sensitivity;

namespace StarterCtl.Sweeps.Summary;

/// <summary>
/// What a sweep came to. Everything here is a count, a value that stands in some row, found by sorting, or a sum over the rows in their order: it is
/// the same to the last bit however the rows were grouped, split over files or run.
/// </summary>
/// <param name="Header">Of what.</param>
/// <param name="Failed">Starts that passed a limit of the case.</param>
/// <param name="Outcomes">Outcomes over all rows.</param>
/// <param name="Worst">Worst rows by name.</param>
/// <param name="Faults">How often each first fault came, the most frequent first.</param>
/// <param name="Sensitivity">What drives the outcomes; empty for a sweep by another method than sensitivity.</param>
public sealed record SweepSummary(
    SweepHeader Header,
    ShareEstimate Failed,
    IReadOnlyList<OutcomeSummary> Outcomes,
    IReadOnlyList<WorstCase> Worst,
    IReadOnlyList<KeyValuePair<string, long>> Faults,
    IReadOnlyList<OutcomeSensitivity> Sensitivity)
{
    /// <summary>Probability with which each bound holds for independent starts.</summary>
    public const double Confidence = 0.95;

    private static readonly double[] Parts = [0.05, 0.5, 0.95, 0.99, 0.999];

    // Outcomes of which the largest is the worst; a time of a start that never got there is later than any.
    private static readonly (string Column, string Worst)[] Largest =
    [
        (SweepColumns.Peak, "highest peak current"), (SweepColumns.Torque, "highest peak torque"), (SweepColumns.FullSupply, "longest start"),
        (SweepColumns.ToSpeed, "longest run-up"), (SweepColumns.Hottest, "hottest section"), (SweepColumns.Armature, "most heat in the armature"),
    ];

    /// <summary>Sums results up.</summary>
    /// <param name="tables">Files of one sweep, which together hold its rows.</param>
    /// <exception cref="SweepException">One cannot be read.</exception>
    public static SweepSummary Of(params IReadOnlyList<SweepTable> tables)
    {
        SweepHeader header = tables[0].Header;
        long[] rows = Joined(tables, table => table.Rows());
        bool[] passed = Joined(tables, table => table.Passed());
        // One column at a time, and always in the same place: of a sweep of any length this is what stands in memory.
        double[] values = new double[rows.Length];
        List<OutcomeSummary> outcomes = [];
        List<WorstCase> worst = [];
        IEnumerable<(string Column, string Worst)> sections = Enumerable.Range(1, header.Sections).Select(section => (SweepColumns.Section(section), $"most heat in section {section}"));
        foreach ((string column, string name) in Largest.Concat(sections))
        {
            Read(tables, column, values);
            // Nothing warms up in the case.
            if (column == SweepColumns.Hottest && Array.TrueForAll(values, double.IsInfinity)) continue;
            worst.Add(WorstOf(name, column, rows, values, passed));
            Array.Sort(values);
            outcomes.Add(new OutcomeSummary(column, values[0], [.. Parts.Select(part => QuantileEstimate.Of(values, part, Confidence))], values[^1]));
        }

        IEnumerable<string> faults = tables.SelectMany(table => table.Words(SweepColumns.Fault)).Where(fault => fault.Length > 0);
        return new SweepSummary(
            header,
            ShareEstimate.Bounded(passed.LongCount(hasPassed => !hasPassed), rows.Length, Confidence),
            outcomes,
            worst,
            [.. faults.GroupBy(fault => fault).Select(same => KeyValuePair.Create(same.Key, same.LongCount())).OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal)],
            SweepSensitivity.Of(header, tables, rows, Confidence));
    }

    private static T[] Joined<T>(IReadOnlyList<SweepTable> tables, Func<SweepTable, T[]> read) => tables.Count == 1 ? read(tables[0]) : [.. tables.SelectMany(read)];

    private static void Read(IReadOnlyList<SweepTable> tables, string column, double[] values)
    {
        int at = 0;
        foreach (SweepTable table in tables)
        {
            table.Numbers(column, values.AsMemory(at));
            at += (int)table.RowCount;
        }

        // What did not happen is later, and worse, than anything that did.
        foreach (ref double value in values.AsSpan())
        {
            if (double.IsNaN(value)) value = double.PositiveInfinity;
        }
    }

    private static WorstCase WorstOf(string name, string column, long[] rows, double[] values, bool[] passed)
    {
        int worst = 0;
        for (int i = 1; i < rows.Length; i++)
        {
            if (values[i] > values[worst] || (values[i] == values[worst] && rows[i] < rows[worst])) worst = i;
        }

        return new WorstCase(name, rows[worst], values[worst], column, passed[worst]);
    }
}
