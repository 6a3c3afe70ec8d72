using System.Collections.Generic;
using System.Linq;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Products;

/// <summary>The published shape of a trial's result. Extend, never rename.</summary>
public sealed record TrialJson(string Trial, string Title, string File, string Row, IReadOnlyList<string> Tags, string Verdict, IReadOnlyList<TrialJson.AttemptJson> Attempts)
{
    /// <summary>One attempt.</summary>
    public sealed record AttemptJson(string Verdict, double Seconds, string? Trouble, IReadOnlyList<Outcome> Expectations, string? CoreVersion, string? SettingsChecksum, LinkFigures? Link, string? Board);

    /// <summary>The shape of a result.</summary>
    public static TrialJson Of(TrialResult result) => new(
        result.Trial.Name, result.Trial.Title, result.Trial.FileName, result.Trial.Row, result.Trial.Tags, VerdictText.Word(result.Verdict), [.. result.Attempts.Select(Of)]);

    private static AttemptJson Of(TrialAttempt attempt) => new(
        VerdictText.Word(attempt.Verdict), attempt.Seconds, attempt.Trouble, attempt.Outcomes, attempt.Report?.CoreVersion, attempt.Report?.SettingsChecksum, attempt.Report?.Link, attempt.Report?.Board);
}
