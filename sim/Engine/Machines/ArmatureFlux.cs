namespace StarterCtl.Engine.Machines;

/// <summary>Machine constant times flux over the armature current alone, while the field current stands still.</summary>
/// <param name="Law">The flux over both currents.</param>
/// <param name="FieldAmps">Field current, A; 0 for a series machine.</param>
public sealed record ArmatureFlux(FluxLaw Law, double FieldAmps)
{
    /// <summary>Machine constant times flux at an armature current, V s/rad.</summary>
    public double ConstantAt(double armatureAmps) => Law.ConstantAt(FieldAmps, armatureAmps);
}
