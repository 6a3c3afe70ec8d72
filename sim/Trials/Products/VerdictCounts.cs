using System.Collections.Generic;
using System.Linq;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Products;

/// <summary>How many trials ended how.</summary>
/// <param name="Trials">All of them.</param>
/// <param name="Passed">Every expectation held.</param>
/// <param name="Failed">At least one did not.</param>
/// <param name="Errors">Trouble with the target.</param>
/// <param name="NotRun">Not reached.</param>
/// <param name="Aborted">In the middle at a cancellation.</param>
/// <param name="Retried">Tried more than once, whatever came of it.</param>
public sealed record VerdictCounts(int Trials, int Passed, int Failed, int Errors, int NotRun, int Aborted, int Retried)
{
    /// <summary>Counts results.</summary>
    public static VerdictCounts Of(IReadOnlyList<TrialResult> results)
    {
        return new(
            results.Count, Count(TrialVerdict.Pass), Count(TrialVerdict.Fail), Count(TrialVerdict.Error), Count(TrialVerdict.NotRun), Count(TrialVerdict.Aborted),
            results.Count(result => result.Attempts.Count > 1));

        int Count(TrialVerdict verdict) => results.Count(result => result.Verdict == verdict);
    }
}
