using System.Collections.Generic;
using System.Linq;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Running;

/// <summary>One go at a trial.</summary>
/// <param name="Verdict">How it ended.</param>
/// <param name="Outcomes">What became of each expectation; of those of a trial that did not get to its end, as far as it got.</param>
/// <param name="Seconds">Time of the trial itself that was run, s.</param>
public sealed record TrialAttempt(TrialVerdict Verdict, IReadOnlyList<Outcome> Outcomes, double Seconds)
{
    /// <summary>What was wrong with the target; null where nothing was.</summary>
    public string? Trouble { get; init; }

    /// <summary>What the target said of itself; null where it did not get to that.</summary>
    public TargetReport? Report { get; init; }

    /// <summary>Why it did not pass, a line for each expectation that does not hold; empty where it did.</summary>
    public string Why => Verdict switch
    {
        TrialVerdict.Fail => string.Join('\n', Outcomes.Where(outcome => !outcome.Passed).Select(outcome => $"{outcome.Name}: {outcome.Seen}, expected {outcome.Limit}")),
        TrialVerdict.Error => Trouble ?? "",
        TrialVerdict.Aborted => "cancelled",
        _ => "",
    };
}
