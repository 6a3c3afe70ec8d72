using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>Everything that a simulated start needs beside the controller's settings.</summary>
public sealed record RunSetup
{
    /// <summary>Machine and everything on its shaft.</summary>
    public required Machine Machine { get; init; }

    /// <summary>Load at the beginning.</summary>
    public required Load Load { get; init; }

    /// <summary>The load's part of the machine's inertia at the beginning, kg m2; only an event that changes it asks for it.</summary>
    public double LoadInertiaKgM2 { get; init; }

    /// <summary>Supply at the beginning.</summary>
    public required Supply Supply { get; init; }

    /// <summary>Starter sections, ohm, first cut out first.</summary>
    public required IReadOnlyList<double> SectionOhms { get; init; }

    /// <summary>Contactor times.</summary>
    public required Contactors Contactors { get; init; }

    /// <summary>Field circuit; null is a machine of constant flux with the machine's own constant.</summary>
    public FieldCircuit? Field { get; init; }

    /// <summary>Brake resistor alone, without the armature, ohm, above 0; null: the brake contactor switches nothing.</summary>
    public double? BrakeOhms { get; init; }

    /// <summary>What the sensors make of what is there; null: they are ideal.</summary>
    public SensorModel? Sensors { get; init; }

    /// <summary>What warms up; null: every resistance stays as it is.</summary>
    public ThermalSetup? Heat { get; init; }

    /// <summary>What the starting resistor's temperature sensor reads at the beginning where the sections do not warm up, degC.</summary>
    public double ResistorCelsius { get; init; } = 20;

    /// <summary>Control period, microseconds.</summary>
    public int PeriodMicroseconds { get; init; } = 1000;

    /// <summary>How far ticks come late; null: each comes on time.</summary>
    public LoopJitter? Jitter { get; init; }

    /// <summary>Length of the run, s.</summary>
    public double DurationSeconds { get; init; } = 10;

    /// <summary>Speed at the beginning, rad/s.</summary>
    public double InitialSpeedRadPerSec { get; init; }

    /// <summary>The machine on its full supply: line closed, no section in the circuit, field standing.</summary>
    /// <param name="load">Its load.</param>
    public PlantConditions OnFullSupply(Load load) => new(Machine, load, Supply, [], true, 0) { Field = Field };

    /// <summary>What happens on the way: events with a time in the order of time, those on a condition anywhere.</summary>
    public IReadOnlyList<RunEvent> Events { get; init; } = [];
}
