namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What a start of the nominal plant costs.</summary>
/// <param name="Seconds">Time to the full supply, s; NaN: never.</param>
/// <param name="SectionJoules">Heat of all sections, J.</param>
/// <param name="ArmatureJoules">Heat of the armature circuit, J.</param>
public sealed record NominalCost(double Seconds, double SectionJoules, double ArmatureJoules);
