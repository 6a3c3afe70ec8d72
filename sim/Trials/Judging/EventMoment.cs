using StarterCtl.Engine.Runs;

namespace StarterCtl.Trials.Judging;

/// <summary>An event of a trial whose moment opens a window.</summary>
/// <param name="Number">Its place among the trial's events, from 1.</param>
/// <param name="AtSeconds">Its time, s; null where it waits for a condition.</param>
/// <param name="When">That condition.</param>
public sealed record EventMoment(int Number, double? AtSeconds, EventCondition? When);
