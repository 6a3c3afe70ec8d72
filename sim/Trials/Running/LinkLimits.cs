using System.Collections.Generic;
using System.Globalization;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Running;

/// <summary>What a link may do to a trial that passes; null: anything.</summary>
public sealed record LinkLimits
{
    /// <summary>Most late steps and exchanges.</summary>
    public long? MostMissedDeadlines { get; init; }

    /// <summary>Most lost frames.</summary>
    public long? MostLostFrames { get; init; }

    /// <summary>Longest latency, s.</summary>
    public double? MostLatencySeconds { get; init; }

    /// <summary>Holds the figures of a trial against the limits.</summary>
    /// <param name="link">The figures; null where the target has no link, which keeps every limit.</param>
    public IEnumerable<Outcome> Judge(LinkFigures? link)
    {
        if (link == null) yield break;
        if (MostMissedDeadlines is long missed) yield return new Outcome("missed deadlines", link.MissedDeadlines <= missed, Whole(link.MissedDeadlines), $"at most {Whole(missed)}");
        if (MostLostFrames is long lost) yield return new Outcome("lost frames", link.LostFrames <= lost, Whole(link.LostFrames), $"at most {Whole(lost)}");
        if (MostLatencySeconds is double latency)
        {
            yield return new Outcome("latency", link.LargestLatencySeconds <= latency, Milliseconds(link.LargestLatencySeconds), $"at most {Milliseconds(latency)}");
        }
    }

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Milliseconds(double seconds) => (seconds * 1000).ToString("0.###", CultureInfo.InvariantCulture) + " ms";
}
