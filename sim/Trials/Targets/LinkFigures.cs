using System.Collections.Generic;

namespace StarterCtl.Trials.Targets;

/// <summary>How a link did during one trial.</summary>
/// <param name="Exchanges">Sensor values sent that were answered with outputs.</param>
/// <param name="MissedDeadlines">Exchanges or model steps that came later than they were due.</param>
/// <param name="LostFrames">Frames that were sent and never answered, or came and could not be read.</param>
/// <param name="LeastLatencySeconds">Shortest time from sending to the answer, s.</param>
/// <param name="MedianLatencySeconds">Its median, s.</param>
/// <param name="P99LatencySeconds">The time that 99 % of them did not exceed, s.</param>
/// <param name="LargestLatencySeconds">The longest, s.</param>
public sealed record LinkFigures(
    long Exchanges,
    long MissedDeadlines,
    long LostFrames,
    double LeastLatencySeconds,
    double MedianLatencySeconds,
    double P99LatencySeconds,
    double LargestLatencySeconds)
{
    /// <summary>How many latencies fell into which class, from the shortest to the longest.</summary>
    public IReadOnlyList<LatencyClass> Histogram { get; init; } = [];

    /// <summary>How many model steps by the clock began how far behind their time; empty in lockstep.</summary>
    public IReadOnlyList<LatencyClass> StepsLate { get; init; } = [];
}
