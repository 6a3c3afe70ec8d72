namespace StarterCtl.Engine.Solving;

/// <summary>A machine in its steady state at one armature current.</summary>
/// <param name="ArmatureAmps">Armature current, A.</param>
/// <param name="Constant">Machine constant times flux, V s/rad.</param>
/// <param name="BackEmfVolts">Back-EMF, V.</param>
public sealed record OperatingPoint(double ArmatureAmps, double Constant, double BackEmfVolts)
{
    /// <summary>Shaft speed, rad/s.</summary>
    public double SpeedRadPerSec => BackEmfVolts / Constant;

    /// <summary>Shaft speed, r/min.</summary>
    public double Rpm => SpeedRadPerSec * 30 / System.Math.PI;

    /// <summary>Torque that the current makes, N m.</summary>
    public double TorqueNewtonMetres => Constant * ArmatureAmps;
}
