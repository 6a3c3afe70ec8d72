using System;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// Machine constant times flux over both currents: the curve at an exciting current
/// <c>x = f If + a Ia - r |Ia|</c>, in amperes of the winding that the curve was taken with.
/// </summary>
/// <param name="Curve">The curve.</param>
public sealed record FluxLaw(Magnetisation Curve)
{
    /// <summary>Share of the field current, f: 1 for a field winding, 0 for a series machine, 1 + a in a short shunt.</summary>
    public double FieldShare { get; init; } = 1;

    /// <summary>
    /// Share of the armature current, a: turns of the series winding over those of the field winding; 1 for a series machine;
    /// below 0 for a differential compound.
    /// </summary>
    public double ArmatureShare { get; init; }

    /// <summary>Armature reaction, r: field current that an ampere of the armature takes away, whatever its direction; 0 or more.</summary>
    public double ReactionRatio { get; init; }

    /// <summary>True when the flux moves with the armature current.</summary>
    public bool FollowsArmature => ArmatureShare != 0 || ReactionRatio != 0;

    /// <summary>The exciting current, A.</summary>
    public double ExcitingAmps(double fieldAmps, double armatureAmps) =>
        FieldShare * fieldAmps + ArmatureShare * armatureAmps - ReactionRatio * Math.Abs(armatureAmps);

    /// <summary>Machine constant times flux, V s/rad.</summary>
    public double ConstantAt(double fieldAmps, double armatureAmps) => Curve.ConstantAt(ExcitingAmps(fieldAmps, armatureAmps));
}
