namespace StarterCtl.Engine.Parts;

/// <summary>What one part of a section has to take.</summary>
/// <param name="Stage">The stage whose contactor shorts its section.</param>
/// <param name="Part">The part.</param>
/// <param name="Joules">Heat in one start, J; null without inertia.</param>
/// <param name="MeanWatts">Mean power at the starts an hour, W; null without inertia.</param>
/// <param name="Share">Part of its rating that is taken, pulse and mean together; null without rating or inertia.</param>
/// <param name="WorstVolts">Voltage across it when the current is highest while it is in, V.</param>
public sealed record PartBurden(int Stage, Part Part, double? Joules, double? MeanWatts, double? Share, double WorstVolts);
