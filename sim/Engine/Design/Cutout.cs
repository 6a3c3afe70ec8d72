namespace StarterCtl.Engine.Design;

/// <summary>Where a stage is cut out.</summary>
/// <param name="RadPerSec">Speed, rad/s.</param>
/// <param name="Amps">The current that was asked for there, A; null: whatever flows at that speed.</param>
internal sealed record Cutout(double RadPerSec, double? Amps);
