using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A fault that was latched.</summary>
/// <param name="Id">Which.</param>
/// <param name="Seconds">When, s.</param>
/// <param name="Value">What was measured; unit in the fault's description.</param>
/// <param name="Limit">What it was held against.</param>
public sealed record FaultEntry(FaultId Id, double Seconds, float Value, float Limit);
