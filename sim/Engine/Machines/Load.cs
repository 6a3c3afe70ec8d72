using System;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// A load: passive parts, which oppose rotation and hold a shaft at rest up to their torque there, and a hoist's, which pulls one way.
/// </summary>
/// <param name="ConstantNewtonMetres">Torque that does not depend on speed, N m, 0 or more.</param>
/// <param name="ViscousNewtonMetreSeconds">Torque per speed, N m s/rad, 0 or more.</param>
/// <param name="FanNewtonMetreSecondsSquared">Torque per speed squared, N m s2/rad2, 0 or more.</param>
public sealed record Load(
    double ConstantNewtonMetres,
    double ViscousNewtonMetreSeconds,
    double FanNewtonMetreSecondsSquared)
{
    /// <summary>No load at all.</summary>
    public static Load None { get; } = new(0, 0, 0);

    /// <summary>Passive torque from a table over the speed, beside the others; null: none.</summary>
    public LoadTable? Table { get; init; }

    /// <summary>Torque up to which a shaft at rest is held, N m.</summary>
    public double HoldingNewtonMetres => ConstantNewtonMetres + (Table?.StandstillNewtonMetres ?? 0);

    /// <summary>True where the torque is no straight line over the speed of either direction.</summary>
    public bool IsBent => FanNewtonMetreSecondsSquared > 0 || Table != null;

    /// <summary>
    /// Torque that acts in one direction whatever the speed, N m: above 0 against forward rotation, below 0 with it. At rest the
    /// holding torque is held against what the motor leaves of it.
    /// </summary>
    public double HoistNewtonMetres { get; init; }

    /// <summary>Torque at a speed, N m: the passive parts of the speed's sign, at rest the holding torque, which opposes a start; and the hoist's.</summary>
    public double TorqueAt(double speedRadPerSec)
    {
        double magnitude = Math.Abs(speedRadPerSec);
        double torque = ConstantNewtonMetres
            + ViscousNewtonMetreSeconds * magnitude
            + FanNewtonMetreSecondsSquared * magnitude * magnitude
            + (Table?.At(magnitude, out _) ?? 0);
        return (speedRadPerSec < 0 ? -torque : torque) + HoistNewtonMetres;
    }
}
