using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.Sensitivity;

/// <summary>What drives the outcomes of a sweep by the method sensitivity.</summary>
internal static class SweepSensitivity
{
    // Whether a start passes is known of every row, also of those that never got there.
    private static readonly string[] Asked = [SweepColumns.Peak, SweepColumns.FullSupply, SweepColumns.Hottest, SweepColumns.Passed];

    /// <summary>Indices of every outcome that the case has; rows are taken in their order, however files hold them.</summary>
    /// <param name="header">What was swept.</param>
    /// <param name="tables">Files of one sweep, which together hold its rows.</param>
    /// <param name="rows">Numbers of the rows, file by file.</param>
    /// <param name="confidence">Probability of the bounds.</param>
    /// <returns>Empty for a sweep by another method.</returns>
    /// <exception cref="SweepException">A file cannot be read.</exception>
    public static IReadOnlyList<OutcomeSensitivity> Of(SweepHeader header, IReadOnlyList<SweepTable> tables, long[] rows, double confidence)
    {
        if (header.Method != SamplingMethod.Sensitivity) return [];
        int[] order = [.. Enumerable.Range(0, rows.Length)];
        Array.Sort([.. rows], order);
        int[] begins = [.. Begins(rows, order, SensitivitySampling.GroupRows(header.Inputs.Count))];
        List<OutcomeSensitivity> all = [];
        foreach (string column in Asked)
        {
            double[] values = column == SweepColumns.Passed
                ? [.. tables.SelectMany(table => table.Passed()).Select(passed => passed ? 1.0 : 0.0)]
                : [.. tables.SelectMany(table => table.Numbers(column))];
            // Nothing warms up in the case.
            if (column == SweepColumns.Hottest && Array.TrueForAll(values, double.IsNaN)) continue;
            all.Add(Of(header, column, Array.ConvertAll(order, i => values[i]), begins, confidence));
        }

        return all;
    }

    private static OutcomeSensitivity Of(SweepHeader header, string column, double[] values, int[] begins, double confidence)
    {
        int group = SensitivitySampling.GroupRows(header.Inputs.Count);
        int[] known = [.. begins.Where(begin => AreKnown(values.AsSpan(begin, group)))];
        double[] outcomes = [.. known.SelectMany(begin => values.AsSpan(begin, group).ToArray())];
        VarianceIndices? indices = known.Length < SensitivitySampling.LeastPoints ? null : VarianceIndices.Of(outcomes, group - 2, header.Seed, confidence);
        IEnumerable<InputSensitivity> inputs = indices == null ? []
            : header.Inputs.Append(InputSensitivity.Noise).Select((input, i) => new InputSensitivity(input, indices.FirstOrder[i], indices.Total[i]));
        return new OutcomeSensitivity(
            column,
            known.Length,
            begins.Length - known.Length,
            known.Length == 0 ? null : DeviationOf([.. known.SelectMany(begin => values.AsSpan(begin, 2).ToArray())]),
            [.. inputs.OrderByDescending(input => input.Total.Value)]);
    }

    // Places, among the sorted rows, of groups of which no row is missing.
    private static IEnumerable<int> Begins(long[] rows, int[] order, int group)
    {
        for (int i = 0; i + group <= order.Length; i++)
        {
            long first = rows[order[i]];
            if (first % group == 0 && rows[order[i + group - 1]] == first + group - 1) yield return i;
        }
    }

    private static bool AreKnown(ReadOnlySpan<double> values)
    {
        foreach (double value in values)
        {
            if (!double.IsFinite(value)) return false;
        }

        return true;
    }

    private static double DeviationOf(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Average(value => (value - mean) * (value - mean)));
    }
}
