namespace StarterCtl.Engine.Design;

/// <summary>One stage of a designed starter.</summary>
/// <param name="Stage">1 for the first cut out.</param>
/// <param name="TotalOhms">Armature-circuit total while the stage is in effect, ohm.</param>
/// <param name="SectionOhms">The section that the stage's contactor shorts, ohm.</param>
/// <param name="CutoutVolts">Threshold: back-EMF at which it may be cut out at rated supply, V.</param>
/// <param name="CutoutFraction">The same as a part of the supply voltage.</param>
/// <param name="CutoutRpm">Speed at the cutout, r/min; null without a machine constant.</param>
/// <param name="PeakAmps">Current just after the stage comes into effect, A.</param>
/// <param name="SwitchingAmps">Current just before it is cut out, A.</param>
/// <param name="VoltsLeft">
/// Volts left across the armature circuit at the cutout: what the controller holds, V. Where the flux changes with the current,
/// they are what the flux of the peak current leaves, V - Vb - k(I1) w.
/// </param>
/// <param name="LoadAmps">Current that the load needs at the cutout speed, A; null without a machine constant.</param>
/// <param name="ExpectedSeconds">Time in the stage without inductance and contactor delays, s; null without inertia.</param>
/// <param name="EnergyJoules">Heat of the section over one whole start, J; null without inertia.</param>
public sealed record DesignedStage(
    int Stage,
    double TotalOhms,
    double SectionOhms,
    double CutoutVolts,
    double CutoutFraction,
    double? CutoutRpm,
    double PeakAmps,
    double SwitchingAmps,
    double VoltsLeft,
    double? LoadAmps,
    double? ExpectedSeconds,
    double? EnergyJoules)
{
    /// <summary>
    /// Back-EMF at which the current has fallen to the lockout current, V, where the stage waits for that beyond its threshold; null where it does not.
    /// Speed, currents, times and heats are those of the later of the two.
    /// </summary>
    public double? HeldToVolts { get; init; }
}
