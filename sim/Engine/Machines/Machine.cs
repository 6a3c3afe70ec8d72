namespace StarterCtl.Engine.Machines;

/// <summary>A DC machine with everything that turns on its shaft.</summary>
/// <param name="Constant">
/// Machine constant times flux, k: E = k w and T = k Ia; V s/rad = N m/A, above 0. Where <see cref="Flux"/> is there it is the
/// constant of the rated point, and the flux of the moment takes its place.
/// </param>
/// <param name="ArmatureOhms">Armature-circuit resistance without the starter's, ohm, above 0; a series winding that carries the armature current included.</param>
/// <param name="ArmatureHenries">Armature-circuit inductance, H; 0 lets the current jump.</param>
/// <param name="BrushDropVolts">Drop of both brushes together while current flows, V, 0 or more.</param>
/// <param name="InertiaKgM2">Total inertia at the shaft, motor and load, kg m2, above 0.</param>
public sealed record Machine(
    double Constant,
    double ArmatureOhms,
    double ArmatureHenries,
    double BrushDropVolts,
    double InertiaKgM2)
{
    /// <summary>Machine constant times flux over the currents; null: it is constant.</summary>
    public FluxLaw? Flux { get; init; }
}
