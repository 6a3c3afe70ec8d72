using System;

namespace StarterCtl.Engine.Machines;

/// <summary>
/// A load: passive parts, which oppose rotation and hold a shaft at rest up to the constant torque, and a hoist's, which pulls one way.
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

    /// <summary>
    /// Torque that acts in one direction whatever the speed, N m: above 0 against forward rotation, below 0 with it. At rest the
    /// constant torque holds against what the motor leaves of it.
    /// </summary>
    public double HoistNewtonMetres { get; init; }

    /// <summary>Torque at a speed, N m: the passive parts of the speed's sign, at rest the constant torque, which opposes a start; and the hoist's.</summary>
    public double TorqueAt(double speedRadPerSec)
    {
        double magnitude = Math.Abs(speedRadPerSec);
        double torque = ConstantNewtonMetres
            + ViscousNewtonMetreSeconds * magnitude
            + FanNewtonMetreSecondsSquared * magnitude * magnitude;
        return (speedRadPerSec < 0 ? -torque : torque) + HoistNewtonMetres;
    }
}
