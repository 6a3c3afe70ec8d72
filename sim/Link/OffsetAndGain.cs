namespace StarterCtl.Link;

/// <summary>What makes a quantity of counts: units = (counts - offset) times gain.</summary>
/// <param name="OffsetCounts">Counts at zero.</param>
/// <param name="UnitsPerCount">V, A or rad/s per count.</param>
public sealed record OffsetAndGain(float OffsetCounts, float UnitsPerCount);
