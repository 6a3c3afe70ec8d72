using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// Temperatures of windings and sections over a run, and the resistances that follow from them: copper by IEC 60034-1, sections by their
/// own coefficient. Time goes in spans. Over each a resistance is that of the temperature foreseen for its middle, so that the error
/// shrinks with the square of the span; the heat is what the account booked for it. The brushes' loss warms the commutator and no winding.
/// </summary>
internal sealed class Temperatures
{
    // A span ends before it moves a resistance by more than this part: its middle is off by half of it at either end.
    private const double LargestMove = 2e-4;

    // From a change of the circuit on spans double, because the power at its first instant says little.
    private const double FirstSeconds = 1e-3;
    private const double LongestSeconds = 0.02;
    private const double ShortestSeconds = 1e-5;

    private readonly RunSetup _setup;
    private readonly ThermalSetup _heat;
    private readonly ThermalBody? _armature;
    private readonly ThermalBody? _field;
    private readonly ThermalBody[] _sections;
    private readonly double[] _sectionJoules;
    private readonly double _periodSeconds;
    private double _armatureJoules;
    private double _fieldJoules;
    private double _ambientCelsius;
    private double _beganSeconds;
    private double _spanSeconds;
    private PlantConditions? _begun;

    /// <summary>Begins at the temperatures of a setup.</summary>
    public Temperatures(RunSetup setup, ThermalSetup heat)
    {
        _setup = setup;
        _heat = heat;
        _ambientCelsius = heat.AmbientCelsius;
        _periodSeconds = setup.PeriodMicroseconds * 1e-6;
        if (heat.Armature != null) _armature = new ThermalBody(heat.Armature, heat.Start?.Armature ?? heat.WindingCelsius);
        if (heat.Field != null) _field = new ThermalBody(heat.Field, heat.Start?.Field ?? heat.WindingCelsius);
        _sections = [.. heat.Sections.Select((mass, i) => new ThermalBody(mass, heat.Start?.Sections[i] ?? heat.AmbientCelsius))];
        _sectionJoules = new double[_sections.Length];
    }

    /// <summary>When the span ends, s.</summary>
    public double NextSeconds { get; private set; }

    /// <summary>Temperature of the armature winding, degC; NaN where it does not follow the run.</summary>
    public double ArmatureCelsius => _armature?.Celsius ?? double.NaN;

    /// <summary>Temperature of the field winding, degC; NaN likewise.</summary>
    public double FieldCelsius => _field?.Celsius ?? double.NaN;

    /// <summary>Temperature of the hottest section, degC; NaN likewise.</summary>
    public double HottestSectionCelsius => _sections.Length == 0 ? double.NaN : _sections.Max(section => section.Celsius);

    /// <summary>Start, highest and final temperature of every body.</summary>
    public IReadOnlyList<BodyTemperature> Courses =>
        [.. Bodies.Select(body => new BodyTemperature(body.Name, body.Body.StartCelsius, body.Body.HighestCelsius, body.Body.Celsius))];

    /// <summary>Takes over what an event changes about the surroundings.</summary>
    public void Obey(RunEvent happening, double now, PlantSolver plant)
    {
        End(now, plant);
        _ambientCelsius = happening.AmbientCelsius ?? _ambientCelsius;
        if (happening.CoolingBlocked is not bool isBlocked) return;
        foreach ((_, ThermalBody body) in Bodies) body.IsCooled = !isBlocked;
    }

    /// <summary>Ends the span: its heat is in the temperatures.</summary>
    public void End(double now, PlantSolver plant)
    {
        double seconds = now - _beganSeconds;
        if (!(seconds > 0)) return;
        plant.CloseBooks();
        EnergyAccount energy = plant.Energy;
        Warm(_armature, energy.ArmatureJoules - energy.BrushJoules, ref _armatureJoules);
        Warm(_field, energy.FieldWindingJoules, ref _fieldJoules);
        for (int i = 0; i < _sections.Length; i++) Warm(_sections[i], energy.SectionJoules[i], ref _sectionJoules[i]);
        _beganSeconds = now;

        void Warm(ThermalBody? body, double joules, ref double booked)
        {
            body?.Advance(seconds, joules - booked, _ambientCelsius);
            booked = joules;
        }
    }

    /// <summary>Begins the next span, now, in the circuit as it is.</summary>
    /// <returns>Its conditions; the plant's own where no resistance moves.</returns>
    public PlantConditions Begin(double now, PlantSolver plant)
    {
        PlantConditions conditions = plant.Conditions;
        Powers powers = new(conditions, plant);
        _spanSeconds = ReferenceEquals(conditions, _begun) ? Math.Min(2 * _spanSeconds, LongestSeconds) : FirstSeconds;
        _spanSeconds = Math.Max(ShortestSeconds, Math.Min(_spanSeconds, LargestMove / FastestMove(conditions, powers)));
        NextSeconds = OnTick(now, now + _spanSeconds);
        _begun = Warmed(conditions, powers, (NextSeconds - now) / 2);
        return _begun;
    }

    private IEnumerable<(string Name, ThermalBody Body)> Bodies
    {
        get
        {
            if (_armature != null) yield return ("armature winding", _armature);
            if (_field != null) yield return ("field winding", _field);
            for (int i = 0; i < _sections.Length; i++) yield return ($"section {i + 1}", _sections[i]);
        }
    }

    // The largest part of itself by which any resistance moves in a second.
    private double FastestMove(PlantConditions conditions, in Powers powers)
    {
        double fastest = Math.Max(Copper(_armature, powers.ArmatureWatts), Copper(_field, powers.FieldWatts));
        for (int i = 0; i < _sections.Length; i++)
        {
            double kelvin = _sections[i].Celsius - _heat.AmbientCelsius;
            double move = _heat.SectionPerKelvin / (1 + _heat.SectionPerKelvin * kelvin);
            fastest = Math.Max(fastest, move * Math.Abs(_sections[i].KelvinPerSecond(powers.SectionWatts(conditions, i), _ambientCelsius)));
        }

        return fastest;

        double Copper(ThermalBody? body, double watts) => body == null ? 0
            : (CopperTemperature.ResistanceRatio(body.Celsius, body.Celsius + 1) - 1) * Math.Abs(body.KelvinPerSecond(watts, _ambientCelsius));
    }

    private PlantConditions Warmed(PlantConditions conditions, in Powers powers, double seconds)
    {
        PlantConditions warmed = conditions;
        if (_armature != null)
        {
            double ratio = CopperRatio(_armature.CelsiusAfter(seconds, powers.ArmatureWatts, _ambientCelsius));
            warmed = warmed with { Machine = conditions.Machine with { ArmatureOhms = ratio * _setup.Machine.ArmatureOhms } };
            // A short shunt's series winding lies on the same poles' path to the supply, and is taken as warm as the armature.
            if (conditions.Field != null) warmed = warmed with { Field = conditions.Field with { SharedOhms = ratio * _setup.Field!.SharedOhms } };
        }

        if (_field != null)
        {
            double ratio = CopperRatio(_field.CelsiusAfter(seconds, powers.FieldWatts, _ambientCelsius));
            warmed = warmed with { Field = warmed.Field! with { Ohms = ratio * _setup.Field!.Ohms } };
        }

        return _heat.SectionPerKelvin == 0 || _sections.Length == 0 ? warmed : warmed with { SectionOhms = SectionOhms(conditions, powers, seconds) };
    }

    private double[] SectionOhms(PlantConditions conditions, in Powers powers, double seconds)
    {
        double[] ohms = new double[_sections.Length];
        for (int i = 0; i < ohms.Length; i++)
        {
            double celsius = _sections[i].CelsiusAfter(seconds, powers.SectionWatts(conditions, i), _ambientCelsius);
            ohms[i] = _setup.SectionOhms[i] * (1 + _heat.SectionPerKelvin * (celsius - _heat.AmbientCelsius));
        }

        return ohms;
    }

    private double CopperRatio(double celsius) => CopperTemperature.ResistanceRatio(_heat.WindingCelsius, celsius);

    // A span that ends on a tick parts no control period.
    private double OnTick(double now, double end)
    {
        double onTick = Math.Floor(end / _periodSeconds) * _periodSeconds;
        return onTick > now ? onTick : end;
    }

    // What each body takes at this instant, W.
    private readonly struct Powers
    {
        private readonly double _sectionSquareAmps;

        public Powers(PlantConditions conditions, PlantSolver plant)
        {
            double amps = plant.ArmatureAmps, fieldAmps = plant.FieldAmps, lineAmps = plant.LineAmps;
            double sectionAmps = new Network(conditions).Sections.Amps(amps, fieldAmps);
            _sectionSquareAmps = sectionAmps * sectionAmps;
            ArmatureWatts = conditions.Machine.ArmatureOhms * amps * amps;
            if (conditions.Field is not FieldCircuit field) return;
            FieldWatts = field.Ohms * fieldAmps * fieldAmps;
            if (field.IsShunt) ArmatureWatts += field.SharedOhms * lineAmps * lineAmps;
        }

        public double ArmatureWatts { get; }

        public double FieldWatts { get; }

        public double SectionWatts(PlantConditions conditions, int index) =>
            conditions.IsSectionIn(index) ? conditions.SectionOhms[index] * _sectionSquareAmps : 0;
    }
}
