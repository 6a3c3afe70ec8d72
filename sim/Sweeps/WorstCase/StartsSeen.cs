namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What simulated starts of a case over its tolerances came to.</summary>
/// <param name="Starts">Number of starts.</param>
/// <param name="HighestAmps">Highest peak current, A.</param>
/// <param name="HighestRow">Its row.</param>
/// <param name="Above">Starts whose peak passed what it was held against.</param>
/// <param name="Unfinished">Starts that tripped, or never got to the full supply in the time that the case allows.</param>
/// <param name="LongestSeconds">Longest time to the full supply of those that got there, s.</param>
public sealed record StartsSeen(long Starts, double HighestAmps, long HighestRow, long Above, long Unfinished, double LongestSeconds);
