using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// A jammed shaft, as a passive constant torque on top of the load's that no current of the machine overcomes: it stops a
/// turning shaft soon and then holds it. What the shaft's motion held goes to the load in the account of energies.
/// </summary>
public static class ShaftJam
{
    /// <summary>Time within which a jammed shaft comes to rest, s.</summary>
    public const double StopSeconds = 0.02;

    // So much more than the machine's torque at rest on its armature resistance alone that a raised supply changes nothing.
    private const double TorqueRatio = 10;

    /// <summary>The jam's torque, N m.</summary>
    /// <param name="plant">The machine as it turns now.</param>
    /// <param name="supplyVolts">Highest voltage that the supply is known to have, V.</param>
    /// <param name="largestConstant">Largest machine constant times flux that the machine can have, V s/rad.</param>
    internal static double TorqueNewtonMetres(PlantSolver plant, double supplyVolts, double largestConstant)
    {
        Machine machine = plant.Conditions.Machine;
        double speed = Math.Abs(plant.SpeedRadPerSec);
        double amps = (supplyVolts + largestConstant * speed) / machine.ArmatureOhms;
        double motorTorque = largestConstant * Math.Max(amps, Math.Abs(plant.ArmatureAmps));
        return TorqueRatio * motorTorque + machine.InertiaKgM2 * speed / StopSeconds;
    }
}
