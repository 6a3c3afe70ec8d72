using System.Collections.Generic;

namespace StarterCtl.Engine.Runs;

/// <summary>What a simulated run came to. SI units.</summary>
public sealed record RunResult
{
    /// <summary>Cutouts in the order in which they happened.</summary>
    public required IReadOnlyList<Cutout> Cutouts { get; init; }

    /// <summary>Largest magnitude of the armature current over the run, between samples too, A.</summary>
    public required double PeakAmps { get; init; }

    /// <summary>Largest magnitude of the machine's torque over the run, N m.</summary>
    public required double PeakTorqueNewtonMetres { get; init; }

    /// <summary>Time from the start of the case to 95 % of the final speed, s; null when it ended at rest or slower than it began.</summary>
    public required double? SecondsToSpeed { get; init; }

    /// <summary>Speed at the end, r/min.</summary>
    public required double FinalRpm { get; init; }

    /// <summary>Current at the end, A.</summary>
    public required double FinalAmps { get; init; }

    /// <summary>Root-mean-square current over the run, A.</summary>
    public required double RmsAmps { get; init; }

    /// <summary>Heat of each section, J.</summary>
    public required IReadOnlyList<double> SectionJoules { get; init; }

    /// <summary>Heat of the machine's armature circuit, brushes included, J.</summary>
    public required double ArmatureJoules { get; init; }

    /// <summary>The brushes' part of it, J.</summary>
    public required double BrushJoules { get; init; }

    /// <summary>Heat of the brake resistor, J.</summary>
    public double BrakeJoules { get; init; }

    /// <summary>Heat in a shunt winding and its discharge resistor, J; a field with a supply of its own stands beside the account.</summary>
    public double FieldJoules { get; init; }

    /// <summary>Gain of the shunt winding's magnetic energy over the run, J.</summary>
    public double FieldMagneticJoules { get; init; }

    /// <summary>Delivered at the starter's input terminals, J.</summary>
    public required double SupplyJoules { get; init; }

    /// <summary>Lost in the supply's own resistance, before the terminals, J.</summary>
    public required double SourceJoules { get; init; }

    /// <summary>Taken by the load, J.</summary>
    public required double LoadJoules { get; init; }

    /// <summary>Kinetic energy gained by everything on the shaft, J; negative when it ended slower than it began.</summary>
    public required double KineticJoules { get; init; }

    /// <summary>Magnetic energy of the armature at the end, J.</summary>
    public required double MagneticJoules { get; init; }

    /// <summary>Heat of arcs, and the magnetic energy of currents that opening contacts broke at once, J.</summary>
    public required double ArcJoules { get; init; }

    /// <summary>Temperatures of what warms up in the run: armature winding, field winding, sections; empty where nothing does.</summary>
    public IReadOnlyList<BodyTemperature> Temperatures { get; init; } = [];

    /// <summary>Phases in the order in which they were entered.</summary>
    public required IReadOnlyList<PhaseEntry> Phases { get; init; }

    /// <summary>Faults in the order in which they were latched.</summary>
    public required IReadOnlyList<FaultEntry> Faults { get; init; }

    /// <summary>Events whose condition never came true, or whose delay was not over at the end.</summary>
    public IReadOnlyList<RunEvent> EventsLeft { get; init; } = [];

    /// <summary>What the controller did and why.</summary>
    public required IReadOnlyList<TimelineEntry> Timeline { get; init; }
}
