using System;
using System.Collections.Generic;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// The static characteristic of a machine of any kind that takes current through a resistance:
/// <c>V - Vb - I R - k(I) w = 0</c> and <c>T = k(I) I</c>. Speed and torque at a current are direct; the current at a speed or at
/// a load is the first root on the way up from no current, which is where an unloaded machine that is loaded comes to rest.
/// </summary>
/// <param name="DrivingVolts">Supply less brush drop, V; what a shunt winding's current loses in the supply is taken off.</param>
/// <param name="CircuitOhms">Everything that limits the armature current, ohm.</param>
/// <param name="ConstantAt">Machine constant times flux over the armature current, V s/rad.</param>
/// <remarks>Any machines text; k(I) is the machine's curve.</remarks>
public sealed record Characteristic(double DrivingVolts, double CircuitOhms, Func<double, double> ConstantAt)
{
    /// <summary>Current at rest, A.</summary>
    public double StandstillAmps => DrivingVolts / CircuitOhms;

    /// <summary>The machine of a live circuit; a shunt field follows what the supply's resistance takes from it.</summary>
    /// <param name="conditions">Machine, supply, sections and field circuit.</param>
    public static Characteristic Of(PlantConditions conditions)
    {
        Machine machine = conditions.Machine;
        Network network = new(conditions);
        double fieldAmps = network.FinalFieldAmps(0), perAmp = network.FinalFieldAmps(1) - fieldAmps;
        return new Characteristic(
            network.ArmatureVolts - machine.BrushDropVolts - network.CouplingOhms * fieldAmps,
            network.ArmatureOhms + network.CouplingOhms * perAmp,
            amps => machine.Flux?.ConstantAt(fieldAmps + perAmp * amps, amps) ?? machine.Constant);
    }

    /// <summary>The machine as a starter is designed for it: rated supply without source resistance, field standing.</summary>
    /// <param name="input">What the starter was designed from, with a machine constant.</param>
    /// <param name="totalOhms">Armature-circuit total, ohm.</param>
    public static Characteristic Of(DesignInput input, double totalOhms)
    {
        double constant = input.MachineConstant ?? double.NaN;
        return new Characteristic(input.SupplyVolts - input.BrushDropVolts, totalOhms, amps => input.Flux?.ConstantAt(amps) ?? constant);
    }

    /// <summary>The machine at a current.</summary>
    /// <param name="amps">Armature current, A.</param>
    public OperatingPoint AtAmps(double amps) => new(amps, ConstantAt(amps), DrivingVolts - amps * CircuitOhms);

    /// <summary>The machine at a speed; null where it is too fast for the supply to drive any current.</summary>
    /// <param name="radPerSec">Speed, rad/s, 0 or more.</param>
    public OperatingPoint? AtSpeed(double radPerSec) =>
        AtRoot(amps => DrivingVolts - amps * CircuitOhms - ConstantAt(amps) * radPerSec, isUpwards: false);

    /// <summary>The machine at a torque; null where no current up to that of standstill makes it.</summary>
    /// <param name="newtonMetres">Torque, N m, 0 or more.</param>
    public OperatingPoint? AtTorque(double newtonMetres) => AtRoot(amps => amps * ConstantAt(amps) - newtonMetres, isUpwards: true);

    /// <summary>The machine where it carries a load; null where it stalls.</summary>
    /// <param name="load">The load.</param>
    public OperatingPoint? Carrying(Load load) =>
        AtRoot(amps => amps * ConstantAt(amps) - load.TorqueAt(AtAmps(amps).SpeedRadPerSec), isUpwards: true);

    /// <summary>Points of the curve at currents of equal distance.</summary>
    /// <param name="fromAmps">First current, A.</param>
    /// <param name="toAmps">Last current, A.</param>
    /// <param name="count">Number of points, 2 or more.</param>
    public IReadOnlyList<OperatingPoint> Curve(double fromAmps, double toAmps, int count)
    {
        OperatingPoint[] points = new OperatingPoint[count];
        for (int i = 0; i < count; i++) points[i] = AtAmps(fromAmps + (toAmps - fromAmps) * i / (count - 1));
        return points;
    }

    // A function that has its sign behind the root already at no current has no root that a loaded machine would pass.
    private OperatingPoint? AtRoot(Func<double, double> function, bool isUpwards)
    {
        double atNone = function(0);
        if (atNone == 0) return AtAmps(0);
        if (atNone > 0 == isUpwards) return null;
        return FirstRoot.Find(function, 0, StandstillAmps, isSingle: false) is double amps ? AtAmps(amps) : null;
    }
}
