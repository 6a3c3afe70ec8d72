using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// What warms up in a run. A body that is not here keeps the resistance that the setup gives it; magnets keep their flux, and the brake
/// resistor its resistance, however warm.
/// </summary>
public sealed record ThermalSetup
{
    /// <summary>Armature winding, with any series winding; null: its temperature does not follow the run.</summary>
    public ThermalMass? Armature { get; init; }

    /// <summary>Field winding; null likewise.</summary>
    public ThermalMass? Field { get; init; }

    /// <summary>Starter sections, first cut out first; empty likewise, else as many as there are.</summary>
    public IReadOnlyList<ThermalMass> Sections { get; init; } = [];

    /// <summary>Change of the sections' resistance per kelvin above the temperature at the beginning, 1/K, 0 or more.</summary>
    public double SectionPerKelvin { get; init; }

    /// <summary>Temperature around everything at the beginning, and that of the sections, degC.</summary>
    public double AmbientCelsius { get; init; } = 20;

    /// <summary>Temperature of the windings at the beginning, at which the machine's resistances hold, degC.</summary>
    public double WindingCelsius { get; init; } = 20;

    /// <summary>Temperatures at the beginning where they are not those two; null: they are.</summary>
    public BodyCelsius? Start { get; init; }
}
