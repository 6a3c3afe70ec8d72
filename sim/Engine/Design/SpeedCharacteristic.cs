using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>
/// Speed and torque over the armature current of a machine on a resistance, without inductance:
/// <c>V - Vb - I R - k(I) w = 0</c> and <c>T = k(I) I</c>.
/// </summary>
/// <param name="Flux">Machine constant times flux over the armature current.</param>
/// <param name="DrivingVolts">Supply less brush drop, V.</param>
/// <remarks>Any machines text; k(I) is the machine's curve.</remarks>
public sealed record SpeedCharacteristic(ArmatureFlux Flux, double DrivingVolts)
{
    /// <summary>True where more current weakens the flux: armature reaction or a differential winding outweighs the rest.</summary>
    public bool FluxFalls => Flux.Law.ArmatureShare < Flux.Law.ReactionRatio;

    /// <summary>Back-EMF that a current leaves, V.</summary>
    /// <param name="amps">Armature current, A.</param>
    /// <param name="totalOhms">Armature-circuit total, ohm.</param>
    public double BackEmfVolts(double amps, double totalOhms) => DrivingVolts - amps * totalOhms;

    /// <summary>Speed at which a current flows, rad/s.</summary>
    /// <param name="amps">Armature current, A.</param>
    /// <param name="totalOhms">Armature-circuit total, ohm.</param>
    public double SpeedAt(double amps, double totalOhms) => BackEmfVolts(amps, totalOhms) / Flux.ConstantAt(amps);

    /// <summary>Torque of a current, N m.</summary>
    /// <param name="amps">Armature current, A.</param>
    public double TorqueAt(double amps) => amps * Flux.ConstantAt(amps);

    /// <summary>Current at which the current comes to rest at a speed, A.</summary>
    /// <param name="totalOhms">Armature-circuit total, ohm.</param>
    /// <param name="radPerSec">Speed, rad/s.</param>
    /// <param name="fromAmps">
    /// Current from which it rises or falls, A, 0 or more. With a falling flux there can be several; it stops at the first.
    /// </param>
    /// <returns>0 where the speed is too high for any current; infinity where the flux is gone before one is reached.</returns>
    public double AmpsAt(double totalOhms, double radPerSec, double fromAmps)
    {
        double standstillAmps = DrivingVolts / totalOhms;
        if (radPerSec <= 0) return standstillAmps;
        double VoltsOver(double amps) => BackEmfVolts(amps, totalOhms) - Flux.ConstantAt(amps) * radPerSec;
        bool rises = VoltsOver(fromAmps) > 0;
        double end = rises ? Math.Max(standstillAmps, fromAmps) : 0;
        return FirstRoot.Find(VoltsOver, fromAmps, end, !FluxFalls) ?? (rises ? double.PositiveInfinity : 0);
    }

    /// <summary>Smallest current with a torque, A.</summary>
    /// <param name="newtonMetres">Torque, N m, 0 or more.</param>
    /// <param name="totalOhms">Resistance that the current must pass, ohm: only a falling flux asks for it.</param>
    /// <returns>Infinity where a falling flux never gives the torque.</returns>
    public double AmpsForTorque(double newtonMetres, double totalOhms)
    {
        if (newtonMetres <= 0) return 0;
        // A rising flux needs no more than that of no current would; twice that, for a flat one meets it to the last bit.
        double highestAmps = FluxFalls ? DrivingVolts / totalOhms : 2 * newtonMetres / Flux.ConstantAt(0);
        return FirstRoot.Find(amps => TorqueAt(amps) - newtonMetres, 0, highestAmps, !FluxFalls) ?? double.PositiveInfinity;
    }
}
