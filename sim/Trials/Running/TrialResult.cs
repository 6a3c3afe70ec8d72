using System.Collections.Generic;

namespace StarterCtl.Trials.Running;

/// <summary>A trial with every attempt at it.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Attempts">In their order; none where it was not reached.</param>
public sealed record TrialResult(Trial Trial, IReadOnlyList<TrialAttempt> Attempts)
{
    /// <summary>The last attempt; null where there is none.</summary>
    public TrialAttempt? Last => Attempts.Count == 0 ? null : Attempts[^1];

    /// <summary>The last attempt's verdict.</summary>
    public TrialVerdict Verdict => Last?.Verdict ?? TrialVerdict.NotRun;
}
