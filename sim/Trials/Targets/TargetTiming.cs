using System;

namespace StarterCtl.Trials.Targets;

/// <summary>How long a target may take for what; each is bounded by itself.</summary>
public sealed record TargetTiming
{
    /// <summary>From opening the port to a board that answers and has its settings; a retry begins anew. Default: common practice, no source.</summary>
    public TimeSpan Connect { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>From one exchange to the next, repeats included. Default: common practice, no source.</summary>
    public TimeSpan Step { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Until an exchange that was not answered is sent again; no longer than a quarter of <see cref="Step"/>. Default: common practice, no source.</summary>
    public TimeSpan Answer { get; init; } = TimeSpan.FromMilliseconds(250);

    /// <summary>From the end of a trial, whatever ended it, to every coil off and the port free. Default: common practice, no source.</summary>
    public TimeSpan MakeSafe { get; init; } = TimeSpan.FromSeconds(2);
}
