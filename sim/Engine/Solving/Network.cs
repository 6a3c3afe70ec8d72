using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The circuit as armature and field winding see it:
/// <c>La dIa/dt = Ua - s Vb - Ra' Ia - Rc If - k w</c> and <c>Lf dIf/dt = Uf - Rf' If - Rc' Ia</c>, and how every other current follows
/// from these two. A shunt winding and the armature meet in what lies before both, the source and a short shunt's series
/// winding: Rx. A brake resistor Rb lies across the armature, behind the sections Rs. With the line open it is the armature's
/// whole circuit; closed together with the line, which only a fault brings about, it is a divider. With G = 1 / (Rs + Rb) and
/// q = 1 / (1 + Rx G) the voltage before the sections is q (V - Rx If - Rx Rb G Ia). Derived here by Kirchhoff's laws.
/// </summary>
public readonly record struct Network
{
    /// <summary>Looks at a circuit.</summary>
    public Network(PlantConditions conditions)
    {
        Machine machine = conditions.Machine;
        FieldCircuit? field = conditions.Field;
        double volts = conditions.Supply.OpenCircuitVolts;
        bool isShunted = field is { IsShunt: true } && conditions.IsFieldClosed;
        double sharedOhms = conditions.Supply.SourceOhms + (field is { IsShunt: true } ? field.SharedOhms : 0);
        double fieldShare = isShunted ? 1 : 0;
        IsLive = conditions.IsLive;
        ArmatureOhms = conditions.CircuitOhms;
        if (conditions.Arc != ArcPlace.None) ArcVolts = conditions.ArcVolts;
        if (!conditions.IsLineIn)
        {
            if (conditions.IsBrakeIn) ArmatureOhms = machine.ArmatureOhms + conditions.BrakeOhms;
            Brake = new Share(0, -1, 0);
            Line = new Share(0, 0, fieldShare);
        }
        else if (!conditions.IsBrakeIn)
        {
            ArmatureVolts = volts;
            ArmatureOhms += sharedOhms - conditions.Supply.SourceOhms;
            CouplingOhms = fieldShare * sharedOhms;
            FieldCouplingOhms = CouplingOhms;
            Sections = new Share(0, 1, 0);
            Line = new Share(0, 1, fieldShare);
        }
        else
        {
            double sectionOhms = ArmatureOhms - machine.ArmatureOhms - conditions.Supply.SourceOhms;
            double g = 1 / (sectionOhms + conditions.BrakeOhms), q = 1 / (1 + sharedOhms * g), part = conditions.BrakeOhms * g;
            ArmatureVolts = part * q * volts;
            ArmatureOhms = machine.ArmatureOhms + part * (q * sharedOhms * part + sectionOhms);
            CouplingOhms = fieldShare * part * q * sharedOhms;
            FieldCouplingOhms = CouplingOhms;
            Brake = new Share(g * q * volts, -g * (q * sharedOhms * part + sectionOhms), -fieldShare * g * q * sharedOhms);
            Sections = Brake with { Armature = 1 + Brake.Armature };
            Line = Sections with { Field = Sections.Field + fieldShare };
            volts *= q;
            sharedOhms *= q;
        }

        if (field == null) return;
        FieldHenries = field.Henries;
        if (conditions.IsFieldClosed)
        {
            FieldVolts = isShunted ? volts : conditions.FieldVolts ?? field.SupplyVolts;
            FieldOhms = field.Ohms + fieldShare * sharedOhms;
        }
        else
        {
            // The discharge resistor only adds to the winding's own resistance.
            double seconds = Math.Min(field.Henries / field.Ohms, field.DischargeSeconds);
            FieldOhms = seconds > 0 ? field.Henries / seconds : field.Ohms;
            if (seconds == 0) FieldHenries = 0;
        }
    }

    /// <summary>True while the armature current has a path.</summary>
    public bool IsLive { get; }

    /// <summary>Voltage that drives the armature current against the back-EMF, V.</summary>
    public double ArmatureVolts { get; } = 0;

    /// <summary>Voltage of the arc that opposes the armature current, V; 0 while none burns.</summary>
    public double ArcVolts { get; } = 0;

    /// <summary>Everything that limits the armature current, ohm.</summary>
    public double ArmatureOhms { get; }

    /// <summary>Volts that an ampere of the field takes from the armature, ohm.</summary>
    public double CouplingOhms { get; } = 0;

    /// <summary>Voltage that drives the field current, V.</summary>
    public double FieldVolts { get; } = 0;

    /// <summary>Everything that limits the field current, ohm.</summary>
    public double FieldOhms { get; } = 1;

    /// <summary>Volts that an ampere of the armature takes from the field, ohm.</summary>
    public double FieldCouplingOhms { get; } = 0;

    /// <summary>Inductance of the field winding, H; 0: the current jumps.</summary>
    public double FieldHenries { get; } = 0;

    /// <summary>Field current that the armature's leaves in the end, A.</summary>
    public double FinalFieldAmps(double armatureAmps) => (FieldVolts - FieldCouplingOhms * armatureAmps) / FieldOhms;

    /// <summary>Current from the supply.</summary>
    public Share Line { get; } = default;

    /// <summary>Current through the starter sections.</summary>
    public Share Sections { get; } = default;

    /// <summary>Current through the brake resistor.</summary>
    public Share Brake { get; } = default;
}
