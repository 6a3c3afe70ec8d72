using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// Where the energy of armature and shaft went since the beginning, J. Supply = source drop excluded; every other entry
/// adds up to it. A shunt winding takes from the same supply; a field of its own supply stands beside the account: the back-EMF takes from the
/// armature circuit what the torque gives to the shaft, whatever the flux does.
/// </summary>
public sealed class EnergyAccount
{
    private readonly double[] _sectionJoules;

    /// <summary>Opens an account.</summary>
    /// <param name="sectionCount">Number of starter sections.</param>
    public EnergyAccount(int sectionCount)
    {
        _sectionJoules = new double[sectionCount];
    }

    /// <summary>Delivered at the starter's input terminals, J; negative when the machine fed back.</summary>
    public double SupplyJoules { get; private set; }

    /// <summary>Lost in the supply's own resistance, before the terminals, J.</summary>
    public double SourceJoules { get; private set; }

    /// <summary>Heat in each starter section, J, first cut out first.</summary>
    public IReadOnlyList<double> SectionJoules => _sectionJoules;

    /// <summary>Heat in the brake resistor, J.</summary>
    public double BrakeJoules { get; private set; }

    /// <summary>Heat in the armature circuit of the machine, brushes included, J.</summary>
    public double ArmatureJoules { get; private set; }

    /// <summary>The part of <see cref="ArmatureJoules"/> that the brush drop took, J.</summary>
    public double BrushJoules { get; private set; }

    /// <summary>Taken by the load, J; negative when a hoist's load gave more than it took.</summary>
    public double LoadJoules { get; private set; }

    /// <summary>Heat of the arcs between parting contacts, and the magnetic energy of currents that were broken at once, J.</summary>
    public double ArcJoules { get; private set; }

    /// <summary>Integral of the armature current squared, A2 s.</summary>
    public double SquareAmpSeconds { get; private set; }

    /// <summary>Heat of a shunt winding, or of its discharge resistor while its circuit is open, J.</summary>
    public double FieldJoules { get; private set; }

    /// <summary>Heat in a field winding alone, whatever supplies it, J; of a shunt winding's it is a part of <see cref="FieldJoules"/>.</summary>
    public double FieldWindingJoules { get; private set; }

    /// <summary>Books a span during which the circuit and all signs stood still.</summary>
    internal void Book(
        in StepIntegrals span, double seconds, PlantConditions conditions, in Network network, int conduction, int rotation)
    {
        double squareAmpSeconds = Math.Max(0, span.SquareAmpSeconds);
        double lineSquare = network.Line.SquareAmpSeconds(span, seconds), sectionSquare = network.Sections.SquareAmpSeconds(span, seconds);
        double source = conditions.Supply.SourceOhms * lineSquare;
        double brush = Math.Abs(conduction * conditions.Machine.BrushDropVolts * span.AmpSeconds);
        SourceJoules += source;
        SupplyJoules += conditions.Supply.OpenCircuitVolts * network.Line.AmpSeconds(span, seconds) - source;
        BrushJoules += brush;
        ArcJoules += network.ArcVolts * Math.Abs(span.AmpSeconds);
        ArmatureJoules += brush + conditions.Machine.ArmatureOhms * squareAmpSeconds;
        LoadJoules += (rotation * conditions.Load.ConstantNewtonMetres + conditions.Load.HoistNewtonMetres) * span.Radians
            + conditions.Load.ViscousNewtonMetreSeconds * span.SquareSpeedSeconds
            + conditions.Load.FanNewtonMetreSecondsSquared * span.CubeSpeedSeconds
            + span.TableJoules;
        SquareAmpSeconds += squareAmpSeconds;
        for (int i = 0; i < _sectionJoules.Length; i++)
        {
            if (conditions.IsSectionIn(i)) _sectionJoules[i] += conditions.SectionOhms[i] * sectionSquare;
        }

        if (conditions.IsBrakeIn) BrakeJoules += conditions.BrakeOhms * network.Brake.SquareAmpSeconds(span, seconds);
        if (conditions.Field is not FieldCircuit field) return;
        FieldWindingJoules += field.Ohms * span.SquareFieldAmpSeconds;
        if (!field.IsShunt) return;
        ArmatureJoules += field.SharedOhms * lineSquare;
        FieldJoules += (conditions.IsFieldClosed ? field.Ohms : network.FieldOhms) * span.SquareFieldAmpSeconds;
    }

    /// <summary>Books what the load takes at one instant.</summary>
    internal void BookLoad(double joules) => LoadJoules += joules;

    /// <summary>Books the magnetic energy of a current that a contact broke.</summary>
    internal void BookArc(double joules) => ArcJoules += joules;

    /// <summary>Books the magnetic energy of a field current that jumped because nothing held it.</summary>
    internal void BookFieldJump(double joules) => FieldJoules += joules;
}
