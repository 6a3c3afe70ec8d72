using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Ratings;

/// <summary>
/// How everything warms and cools between one simulated start and the next, in closed form: a section only cools, the armature winding carries
/// the settled current until the stop and only cools behind it, a field winding lies on its voltage where no contactor takes it off.
/// </summary>
internal sealed class HeatLaw
{
    // A field winding at constant voltage has no closed form: steps of this part of its time constant, to order 4.
    private const double FieldPart = 0.1;
    private const int FewestFieldSteps = 8;
    private const double SettledParts = 25;

    private readonly RunSetup _setup;
    private readonly ThermalSetup _heat;
    private readonly double _runningAmps;
    private readonly double _brakeJoules;

    /// <summary>Takes over what a settled start says.</summary>
    public HeatLaw(CaseFile file, RunSetup setup, HeatedStart settled)
    {
        _setup = setup;
        _heat = setup.Heat!;
        _runningAmps = settled.Result.FinalAmps;
        Armature = _heat.Armature == null ? null : new CopperBody(_heat.Armature, setup.Machine.ArmatureOhms + (setup.Field?.SharedOhms ?? 0), _heat.WindingCelsius, _heat.AmbientCelsius);
        Bodies = [.. BodiesOf(file, settled)];
        if (setup.BrakeOhms is not double brake) return;
        double speed = settled.Result.FinalRpm * Math.PI / 30;
        // As if no load helped to stop: the brake's loop then takes all of the motion.
        _brakeJoules = setup.Machine.InertiaKgM2 * speed * speed / 2 * setup.Machine.ArmatureOhms / (setup.Machine.ArmatureOhms + brake);
    }

    /// <summary>What warms up, in the order of a run's temperatures.</summary>
    public IReadOnlyList<WarmBody> Bodies { get; }

    /// <summary>The armature winding; null where it does not warm up.</summary>
    public CopperBody? Armature { get; }

    /// <summary>Temperature around everything, degC.</summary>
    public double AmbientCelsius => _heat.AmbientCelsius;

    /// <summary>Time constants with which the bodies cool, s, in the same order.</summary>
    public IReadOnlyList<double> CoolingSeconds => [.. Masses.Select(mass => mass.CoolingSeconds)];

    /// <summary>Temperature of a body after the rest of its run, degC.</summary>
    public double AfterRun(int body, double celsius, double seconds)
    {
        if (seconds <= 0) return celsius;
        if (IsArmature(body)) return Armature!.After(celsius, _runningAmps, seconds);
        return IsField(body) ? FieldAfter(celsius, seconds) : Cooled(body, celsius, seconds);
    }

    /// <summary>Temperature of a body just after the stop: a dynamic brake warms the armature at once.</summary>
    public double AfterStop(int body, double celsius) => IsArmature(body) ? celsius + _brakeJoules / _heat.Armature!.JoulesPerKelvin : celsius;

    /// <summary>Temperature of a body after a rest, degC.</summary>
    public double AfterRest(int body, double celsius, double seconds) =>
        IsField(body) && _setup.Field is { HasContactor: false } ? FieldAfter(celsius, seconds) : Cooled(body, celsius, seconds);

    /// <summary>Temperatures of a start's end, as the next one needs them.</summary>
    public BodyCelsius From(IReadOnlyList<double> celsius)
    {
        int next = 0;
        double armature = _heat.Armature == null ? AmbientCelsius : celsius[next++], field = _heat.Field == null ? AmbientCelsius : celsius[next++];
        return new BodyCelsius(armature, field, [.. celsius.Skip(next)]);
    }

    private IEnumerable<ThermalMass> Masses
    {
        get
        {
            if (_heat.Armature != null) yield return _heat.Armature;
            if (_heat.Field != null) yield return _heat.Field;
            foreach (ThermalMass section in _heat.Sections) yield return section;
        }
    }

    private bool IsArmature(int body) => body == 0 && _heat.Armature != null;

    private bool IsField(int body) => _heat.Field != null && body == (_heat.Armature == null ? 0 : 1);

    private double Cooled(int body, double celsius, double seconds) =>
        new ThermalBody(Masses.ElementAt(body), celsius).CelsiusAfter(seconds, 0, AmbientCelsius);

    private double FieldAfter(double celsius, double seconds)
    {
        FieldCircuit field = _setup.Field!;
        ThermalMass mass = _heat.Field!;
        double Slope(double at)
        {
            double ohms = field.Ohms * CopperTemperature.ResistanceRatio(_heat.WindingCelsius, at), amps = field.SupplyVolts / (ohms + field.SharedOhms);
            return amps * amps * ohms / mass.JoulesPerKelvin - (at - AmbientCelsius) / mass.CoolingSeconds;
        }

        double span = Math.Min(seconds, SettledParts * mass.CoolingSeconds);
        int steps = FewestFieldSteps + (double.IsFinite(mass.CoolingSeconds) ? (int)(span / mass.CoolingSeconds / FieldPart) : 0);
        double step = span / steps;
        for (int i = 0; i < steps; i++)
        {
            double k1 = Slope(celsius), k2 = Slope(celsius + step / 2 * k1), k3 = Slope(celsius + step / 2 * k2), k4 = Slope(celsius + step * k3);
            celsius += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }

        return celsius;
    }

    private IEnumerable<WarmBody> BodiesOf(CaseFile file, HeatedStart settled)
    {
        double? winding = file.Has(CaseKeys.MotorWindingTemperatureLimit) ? file.Number(CaseKeys.MotorWindingTemperatureLimit) : null;
        double? spot = file.Has(CaseKeys.StarterSectionHotSpotLimit) ? file.Number(CaseKeys.StarterSectionHotSpotLimit) : null;
        double factor = file.Number(CaseKeys.StarterSectionHotSpotFactor);
        int windings = settled.Bodies.Count - _heat.Sections.Count;
        for (int i = 0; i < settled.Bodies.Count; i++)
        {
            string name = settled.Bodies[i].Body;
            yield return i < windings ? new WarmBody(name, winding, 1) : new WarmBody(name, AmbientCelsius + (spot - AmbientCelsius) / factor, factor);
        }
    }
}
