using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A phase that was entered.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Seconds">When, s.</param>
/// <param name="Reason">The controller's reason on that tick.</param>
public sealed record PhaseEntry(Phase Phase, double Seconds, Reason Reason);
