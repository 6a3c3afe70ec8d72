using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>The machine at one moment. SI units.</summary>
/// <param name="Seconds">Time since the scene's own zero, s.</param>
/// <param name="SpeedRadPerSec">Shaft speed, rad/s.</param>
/// <param name="BackEmfVolts">Back-EMF, V.</param>
/// <param name="ArmatureAmps">Armature current, A.</param>
/// <param name="TorqueNewtonMetres">Torque that the machine makes, N m.</param>
/// <param name="LoadTorqueNewtonMetres">Torque that the load takes, N m.</param>
/// <param name="TerminalVolts">Voltage at the input terminals, V.</param>
/// <param name="SourceDropVolts">Voltage lost in the supply's own resistance, V.</param>
public sealed record RunningPoint(
    double Seconds,
    double SpeedRadPerSec,
    double BackEmfVolts,
    double ArmatureAmps,
    double TorqueNewtonMetres,
    double LoadTorqueNewtonMetres,
    double TerminalVolts,
    double SourceDropVolts)
{
    /// <summary>Shaft speed, r/min.</summary>
    public double Rpm => SpeedRadPerSec * 30 / System.Math.PI;

    internal static RunningPoint Of(PlantSolver plant, double seconds) => new(
        seconds,
        plant.SpeedRadPerSec,
        plant.BackEmfVolts,
        plant.ArmatureAmps,
        plant.TorqueNewtonMetres,
        plant.LoadTorqueNewtonMetres,
        plant.TerminalVolts,
        plant.Conditions.Supply.OpenCircuitVolts - plant.TerminalVolts);
}
