namespace StarterCtl.Sweeps.WorstCase;

/// <summary>One quantity of a plant.</summary>
/// <param name="Path">The quantity's path in the case.</param>
/// <param name="Unit">Its SI unit; empty for a ratio.</param>
/// <param name="Value">Its value.</param>
/// <param name="IsLow">True at the low limit.</param>
/// <param name="IsHigh">True at the high limit.</param>
public sealed record WorstValue(string Path, string Unit, double Value, bool IsLow, bool IsHigh);
