using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sensitivity;
using StarterCtl.Sweeps.Summary;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a sweep's summary. Extend, never rename. Units stand in the names of the columns.</summary>
public sealed record SweepJson(
    string Verdict,
    SweepHeader Sweep,
    ShareEstimate Failed,
    double Confidence,
    IReadOnlyList<OutcomeSummary> Outcomes,
    IReadOnlyList<WorstRowJson> Worst,
    IReadOnlyList<KeyValuePair<string, long>> Faults,
    IReadOnlyList<OutcomeSensitivity> Sensitivity)
{
    /// <summary>The shape of a summary.</summary>
    /// <param name="summary">The summary.</param>
    /// <param name="commandOf">The command that runs a row to a full record.</param>
    public static SweepJson Of(SweepSummary summary, Func<long, string> commandOf) => new(
        summary.Failed.Count == 0 ? "pass" : "fail",
        summary.Header,
        summary.Failed,
        SweepSummary.Confidence,
        summary.Outcomes,
        [.. summary.Worst.Select(worst => new WorstRowJson(worst.Name, worst.Row, worst.Value, worst.Column, worst.IsPassed, commandOf(worst.Row)))],
        summary.Faults,
        summary.Sensitivity);
}
