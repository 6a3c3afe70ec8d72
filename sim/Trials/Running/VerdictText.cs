namespace StarterCtl.Trials.Running;

/// <summary>Verdicts in words.</summary>
public static class VerdictText
{
    /// <summary>The word of a verdict: "not run".</summary>
    public static string Word(TrialVerdict verdict) => verdict == TrialVerdict.NotRun ? "not run" : verdict.ToString().ToLowerInvariant();
}
