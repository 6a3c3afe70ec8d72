namespace StarterCtl.Trials.Running;

/// <summary>How trials are run.</summary>
public sealed record TrialOptions
{
    /// <summary>True ends the run with the first trial that fails or has trouble; those in the middle still come to their end.</summary>
    public bool FailsFast { get; init; }

    /// <summary>How often a trial that did not pass is tried again, 0 or more.</summary>
    public int Retries { get; init; }

    /// <summary>What a target's link may do to a trial that passes.</summary>
    public LinkLimits Link { get; init; } = new();
}
