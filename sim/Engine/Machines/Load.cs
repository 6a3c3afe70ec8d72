using System;

namespace StarterCtl.Engine.Machines;

/// <summary>A passive load: it opposes rotation and holds a shaft at rest up to its constant torque.</summary>
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

    /// <summary>Torque at a speed, N m, of the speed's sign; at rest the constant torque, which opposes a start.</summary>
    public double TorqueAt(double speedRadPerSec)
    {
        double magnitude = Math.Abs(speedRadPerSec);
        double torque = ConstantNewtonMetres
            + ViscousNewtonMetreSeconds * magnitude
            + FanNewtonMetreSecondsSquared * magnitude * magnitude;
        return speedRadPerSec < 0 ? -torque : torque;
    }
}
