using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A moment at which the controller's phase, stage or reason changed, or something happened to the machine.</summary>
/// <param name="Seconds">When, s.</param>
/// <param name="Phase">Phase on that tick.</param>
/// <param name="Stage">Stage in effect.</param>
/// <param name="Reason">Why.</param>
/// <param name="Quantity">Number of the reason.</param>
/// <param name="Limit">What it was held against.</param>
/// <param name="SecondsLeft">Time left, s; 0 where none runs.</param>
/// <param name="ArmatureAmps">Current, A.</param>
/// <param name="Event">The event when this is one, else null.</param>
public sealed record TimelineEntry(
    double Seconds, Phase Phase, int Stage, Reason Reason, float Quantity, float Limit, double SecondsLeft, double ArmatureAmps, RunEvent? Event)
{
    /// <summary>The fault that was latched on this tick, else null.</summary>
    public FaultEntry? Fault { get; init; }
}
