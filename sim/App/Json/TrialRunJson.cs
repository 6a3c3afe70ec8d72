using System.Collections.Generic;
using System.Linq;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a run of trials. Extend, never rename.</summary>
public sealed record TrialRunJson(string Target, string CoreVersion, VerdictCounts Counts, IReadOnlyList<RunHeader.Planned> Planned, IReadOnlyList<TrialJson> Trials)
{
    /// <summary>The shape of a run.</summary>
    public static TrialRunJson Of(RunHeader header, IReadOnlyList<TrialResult> results, VerdictCounts counts) =>
        new(header.Target, header.CoreVersion, counts, header.Trials, [.. results.Select(TrialJson.Of)]);
}
