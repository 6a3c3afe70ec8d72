using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>What a starter is designed from. SI units; what is null was left open.</summary>
public sealed record DesignInput
{
    /// <summary>Voltage at the starter's input terminals, V, above 0.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>Armature-circuit resistance without the starter, ohm, above 0.</summary>
    public required double ArmatureOhms { get; init; }

    /// <summary>Drop of both brushes, V, 0 or more.</summary>
    public double BrushDropVolts { get; init; }

    /// <summary>Machine constant, V s/rad; without it speeds and times are left out.</summary>
    public double? MachineConstant { get; init; }

    /// <summary>
    /// Machine constant times flux over the armature current, V s/rad; null: the flux is constant. Where it is there,
    /// <see cref="MachineConstant"/> is not used.
    /// </summary>
    public ArmatureFlux? Flux { get; init; }

    /// <summary>Total inertia at the shaft, kg m2; without it times and energies are left out.</summary>
    public double? InertiaKgM2 { get; init; }

    /// <summary>Load torque during the start.</summary>
    public Load Load { get; init; } = Load.None;

    /// <summary>Rated armature current, A, for warnings and the check of the peak.</summary>
    public double? RatedAmps { get; init; }

    /// <summary>I1: highest current allowed just after a cutout, A.</summary>
    public double? PeakAmps { get; init; }

    /// <summary>I2: current at which the next cutout happens, A.</summary>
    public double? SwitchingAmps { get; init; }

    /// <summary>Current above which the controller cuts no stage out, A; infinity: none. One that the load would not let the current fall to holds nothing here.</summary>
    public double LockoutAmps { get; init; } = double.PositiveInfinity;

    /// <summary>Number of stages; null: as many as needed.</summary>
    public int? StageCount { get; init; }

    /// <summary>Use of the slack; null: whichever the given currents allow.</summary>
    public Slack? Slack { get; init; }

    /// <summary>Resistor of a dynamic brake alone, ohm; null: no brake.</summary>
    public double? BrakeOhms { get; init; }

    /// <summary>Sections that are there already, ohm, first cut out first; null: computed.</summary>
    public IReadOnlyList<double>? SectionOhms { get; init; }

    /// <summary>Back-EMF just before each cutout at rated supply, V, given by hand; null: computed.</summary>
    public IReadOnlyList<double>? CutoutVolts { get; init; }

    /// <summary>The machine as a starter is designed for it: rated supply without source resistance, field standing.</summary>
    /// <param name="totalOhms">Armature-circuit total, ohm.</param>
    /// <returns>Without a machine constant it knows no speed and no torque: these are NaN.</returns>
    public Characteristic CharacteristicOn(double totalOhms)
    {
        double drivingVolts = SupplyVolts - BrushDropVolts, constant = MachineConstant ?? double.NaN;
        return Flux == null ? new Characteristic(drivingVolts, totalOhms, _ => constant) : Characteristic.Of(Flux, drivingVolts, totalOhms);
    }
}
