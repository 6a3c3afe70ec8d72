namespace StarterCtl.Trials.Targets;

/// <summary>How many latencies fell into a class.</summary>
/// <param name="UpToSeconds">Longest latency of the class, s.</param>
/// <param name="Count">How many.</param>
public sealed record LatencyClass(double UpToSeconds, long Count);
