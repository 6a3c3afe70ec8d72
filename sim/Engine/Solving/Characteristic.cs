using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The static characteristic of a machine of any kind that takes current through a resistance, without inductance:
/// <c>V - Vb - I R - k(I) w = 0</c> and <c>T = k(I) I</c>. Speed and torque at a current are direct; the current at a speed or at
/// a load is the first root on the way from a current, mostly none: there an unloaded machine that is loaded comes to rest.
/// </summary>
/// <param name="DrivingVolts">Supply less brush drop, V; what a shunt winding's current loses in the supply is taken off.</param>
/// <param name="CircuitOhms">Everything that limits the armature current, ohm.</param>
/// <param name="ConstantAt">Machine constant times flux over the armature current, V s/rad.</param>
/// <remarks>Any machines text; k(I) is the machine's curve.</remarks>
public sealed record Characteristic(double DrivingVolts, double CircuitOhms, Func<double, double> ConstantAt)
{
    /// <summary>True where more current weakens the flux: armature reaction or a differential winding outweighs the rest. Several currents may then fit.</summary>
    public bool FluxFalls { get; private init; }

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
            amps => machine.Flux?.ConstantAt(fieldAmps + perAmp * amps, amps) ?? machine.Constant)
        {
            FluxFalls = machine.Flux is FluxLaw law && law.ArmatureShare + law.FieldShare * perAmp < law.ReactionRatio,
        };
    }

    /// <summary>A machine whose field stands.</summary>
    /// <param name="flux">Machine constant times flux over the armature current.</param>
    /// <param name="drivingVolts">Supply less brush drop, V.</param>
    /// <param name="circuitOhms">Armature-circuit total, ohm.</param>
    public static Characteristic Of(ArmatureFlux flux, double drivingVolts, double circuitOhms) =>
        new(drivingVolts, circuitOhms, flux.ConstantAt) { FluxFalls = flux.Law.ArmatureShare < flux.Law.ReactionRatio };

    /// <summary>The same machine on another resistance.</summary>
    /// <param name="circuitOhms">Armature-circuit total, ohm.</param>
    public Characteristic On(double circuitOhms) => this with { CircuitOhms = circuitOhms };

    /// <summary>The machine at a current.</summary>
    /// <param name="amps">Armature current, A.</param>
    public OperatingPoint AtAmps(double amps) => new(amps, ConstantAt(amps), DrivingVolts - amps * CircuitOhms);

    /// <summary>The machine at a speed; null where it is too fast for the supply to drive any current, or the flux is gone before one is reached.</summary>
    /// <param name="radPerSec">Speed, rad/s, 0 or more.</param>
    public OperatingPoint? AtSpeed(double radPerSec) =>
        VoltsOver(0, radPerSec) >= 0 && AmpsAt(radPerSec, 0) is double amps && double.IsFinite(amps) ? AtAmps(amps) : null;

    /// <summary>The machine at a torque; null where no current up to that of standstill makes it.</summary>
    /// <param name="newtonMetres">Torque, N m; below 0 no current makes it.</param>
    public OperatingPoint? AtTorque(double newtonMetres) =>
        newtonMetres >= 0 && AmpsForTorque(newtonMetres) is double amps && amps <= StandstillAmps ? AtAmps(amps) : null;

    /// <summary>The machine where it carries a load; null where it stalls, or where the load drives it.</summary>
    /// <param name="load">The load.</param>
    public OperatingPoint? Carrying(Load load)
    {
        double Over(double amps)
        {
            OperatingPoint point = AtAmps(amps);
            return point.TorqueNewtonMetres - load.TorqueAt(point.SpeedRadPerSec);
        }

        return Over(0) <= 0 && FirstRoot.Find(Over, 0, StandstillAmps, isSingle: false) is double found ? AtAmps(found) : null;
    }

    /// <summary>Current at which the current comes to rest at a speed, A.</summary>
    /// <param name="radPerSec">Speed, rad/s.</param>
    /// <param name="fromAmps">
    /// Current from which it rises or falls, A, 0 or more. With a falling flux there can be several; it stops at the first.
    /// </param>
    /// <returns>0 where the speed is too high for any current; infinity where the flux is gone before one is reached.</returns>
    public double AmpsAt(double radPerSec, double fromAmps)
    {
        if (radPerSec <= 0) return StandstillAmps;
        bool rises = VoltsOver(fromAmps, radPerSec) > 0;
        double end = rises ? Math.Max(StandstillAmps, fromAmps) : 0;
        return FirstRoot.Find(amps => VoltsOver(amps, radPerSec), fromAmps, end, !FluxFalls) ?? (rises ? double.PositiveInfinity : 0);
    }

    /// <summary>Smallest current with a torque, A, also beyond that of standstill where a rising flux has one.</summary>
    /// <param name="newtonMetres">Torque, N m; 0 A for one that drives.</param>
    /// <returns>Infinity where a falling flux never gives the torque.</returns>
    public double AmpsForTorque(double newtonMetres)
    {
        if (newtonMetres <= 0) return 0;
        // A rising flux needs no more than that of no current would; twice that, for a flat one meets it to the last bit.
        double highestAmps = FluxFalls ? StandstillAmps : 2 * newtonMetres / ConstantAt(0);
        return FirstRoot.Find(amps => amps * ConstantAt(amps) - newtonMetres, 0, highestAmps, !FluxFalls) ?? double.PositiveInfinity;
    }

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

    private double VoltsOver(double amps, double radPerSec) => DrivingVolts - amps * CircuitOhms - ConstantAt(amps) * radPerSec;
}
