using System;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// Load, supply, field supply and shaft, as events change them. A ramp is played as small steps: over every span between two happenings,
/// at most a control period, its value in the middle of the span holds, so that each span is solved and booked exactly. The
/// speed is off by less than the square of the period.
/// </summary>
public sealed class Surroundings(RunSetup setup)
{
    private Ramp _constant = new(setup.Load.ConstantNewtonMetres);
    private Ramp _hoist = new(setup.Load.HoistNewtonMetres);
    private Ramp _volts = new(setup.Supply.OpenCircuitVolts);
    private double _jamNewtonMetres;

    /// <summary>True while the field circuit is broken beside its contactor.</summary>
    public bool IsFieldBroken { get; private set; }

    /// <summary>True while a ramp is on its way.</summary>
    public bool IsMoving { get; private set; }

    /// <summary>When the next ramp arrives, s; infinity when none is on its way.</summary>
    public double NextSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>Whether an event is about anything here.</summary>
    public static bool IsConcerned(RunEvent happening) =>
        happening.LoadTorqueNewtonMetres != null || happening.SupplyVolts != null || happening.ShaftLocked != null
        || happening.FieldSupplyVolts != null || happening.FieldOpen != null || happening.HoistNewtonMetres != null || happening.LoadInertiaKgM2 != null;

    /// <summary>Takes over what an event changes.</summary>
    /// <returns>The plant's conditions from then on, but for contacts.</returns>
    public PlantConditions Obey(RunEvent happening, double now, PlantSolver plant)
    {
        PlantConditions conditions = plant.Conditions;
        if (happening.LoadTorqueNewtonMetres is double constant) _constant.Go(constant, now, happening.OverSeconds);
        if (happening.HoistNewtonMetres is double hoist) _hoist.Go(hoist, now, happening.OverSeconds);
        if (happening.SupplyVolts is double volts) _volts.Go(volts, now, happening.OverSeconds);
        LookAgain();
        IsFieldBroken = happening.FieldOpen ?? IsFieldBroken;
        conditions = At(now, conditions);
        if (happening.ShaftLocked is bool isLocked) _jamNewtonMetres = isLocked ? JamNewtonMetres(plant, conditions) : 0;
        if (happening.LoadInertiaKgM2 is double inertia)
        {
            double alone = setup.Machine.InertiaKgM2 - setup.LoadInertiaKgM2;
            conditions = conditions with { Machine = conditions.Machine with { InertiaKgM2 = alone + inertia } };
        }

        return At(now, conditions) with { FieldVolts = happening.FieldSupplyVolts ?? conditions.FieldVolts };
    }

    /// <summary>Conditions with load and supply as they are at a time.</summary>
    public PlantConditions At(double seconds, PlantConditions conditions) => conditions with
    {
        Load = conditions.Load with { ConstantNewtonMetres = _constant.At(seconds) + _jamNewtonMetres, HoistNewtonMetres = _hoist.At(seconds) },
        Supply = conditions.Supply with { OpenCircuitVolts = _volts.At(seconds) },
    };

    /// <summary>Lets ramps stand still that have arrived.</summary>
    public void Settle(double now)
    {
        _constant.Settle(now);
        _hoist.Settle(now);
        _volts.Settle(now);
        LookAgain();
    }

    private void LookAgain()
    {
        NextSeconds = Math.Min(_constant.EndSeconds, Math.Min(_hoist.EndSeconds, _volts.EndSeconds));
        IsMoving = double.IsFinite(NextSeconds);
    }

    private double JamNewtonMetres(PlantSolver plant, PlantConditions conditions) => ShaftJam.TorqueNewtonMetres(
        plant,
        Math.Max(setup.Supply.OpenCircuitVolts, conditions.Supply.OpenCircuitVolts),
        setup.Machine.Flux?.Curve.Constants[^1] ?? setup.Machine.Constant) + Math.Abs(conditions.Load.HoistNewtonMetres);
}
