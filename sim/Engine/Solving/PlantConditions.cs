using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>Everything around the two states that stands still between events.</summary>
/// <param name="Machine">Machine and inertia.</param>
/// <param name="Load">Load torque.</param>
/// <param name="Supply">Supply.</param>
/// <param name="SectionOhms">Starter sections, ohm, first cut out first.</param>
/// <param name="LineClosed">True while the line contact is closed.</param>
/// <param name="StagesClosed">Closed stage contacts, bit 0 shorts section 1.</param>
public sealed record PlantConditions(
    Machine Machine,
    Load Load,
    Supply Supply,
    IReadOnlyList<double> SectionOhms,
    bool LineClosed,
    int StagesClosed)
{
    /// <summary>Brake resistor alone, ohm, above 0; infinite where none is fitted.</summary>
    public double BrakeOhms { get; init; } = double.PositiveInfinity;

    /// <summary>True while the brake contact is closed: the brake resistor lies across the armature.</summary>
    public bool BrakeClosed { get; init; }

    /// <summary>Field winding; null: the machine has none.</summary>
    public FieldCircuit? Field { get; init; }

    /// <summary>True while the field winding lies on its supply.</summary>
    public bool IsFieldClosed { get; init; } = true;

    /// <summary>Voltage of the field's own supply now, V; null: what the field circuit says.</summary>
    public double? FieldVolts { get; init; }

    /// <summary>Voltage of the arc between line or brake contacts that part with current, V, 0 or more; 0: the current is broken at once.</summary>
    public double ArcVolts { get; init; }

    /// <summary>Where an arc burns. <see cref="PlantSolver"/> says so; nobody else needs to.</summary>
    public ArcPlace Arc { get; internal init; }

    /// <summary>True while the line's contact or an arc in its place can carry current.</summary>
    public bool IsLineIn => LineClosed || Arc == ArcPlace.Line;

    /// <summary>True while the brake resistor can carry current, through its contact or an arc in its place.</summary>
    public bool IsBrakeIn => (BrakeClosed || Arc == ArcPlace.Brake) && double.IsFinite(BrakeOhms);

    /// <summary>True while the armature current has a path.</summary>
    public bool IsLive => IsLineIn || IsBrakeIn;

    /// <summary>Everything in series with the back-EMF, ohm: source, sections that are in, armature.</summary>
    public double CircuitOhms
    {
        get
        {
            double ohms = Supply.SourceOhms + Machine.ArmatureOhms;
            for (int i = 0; i < SectionOhms.Count; i++)
            {
                if (IsSectionIn(i)) ohms += SectionOhms[i];
            }

            return ohms;
        }
    }

    /// <summary>True while no contact shorts the section with this index.</summary>
    public bool IsSectionIn(int index) => (StagesClosed & (1 << index)) == 0;
}
