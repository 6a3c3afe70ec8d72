using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>Plate, machine, supply and load.</summary>
internal static class MachineSection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        Plate plate = study.Plate;
        Machine machine = study.Setup.Machine;
        page.BeginSection("machine", "The machine");
        ReportTable table = new("Plate, machine, supply and load", ["Quantity", "Value"]);
        if (plate.Kind.Length > 0) table.Add("Kind", plate.Kind);
        AddKnown(table, "Rated shaft power", plate.RatedWatts, Watts);
        AddKnown(table, "Rated armature voltage", plate.RatedVolts, Volts);
        AddKnown(table, "Rated armature current", plate.RatedAmps, Amps);
        AddKnown(table, "Rated speed", plate.RatedRadPerSec * 30 / Math.PI, Rpm);
        table.Add(new Markup($"Machine constant <var>k</var>{(machine.Flux == null ? "" : " at the rated point")}"), Constant(machine.Constant));
        table.Add(new Markup($"{CircuitName(study)}, <var>R</var><sub>a</sub>"), Ohms(machine.ArmatureOhms));
        table.Add(new Markup("Armature inductance <var>L</var><sub>a</sub>"), Plain(machine.ArmatureHenries * 1000) + "\u00A0mH");
        table.Add(new Markup("Brush drop, both brushes, <var>V</var><sub>b</sub>"), Volts(machine.BrushDropVolts));
        table.Add(new Markup("Total inertia at the shaft <var>J</var>"), Plain(machine.InertiaKgM2) + "\u00A0kg\u00A0m²");
        table.Add("Supply, open circuit", Volts(study.Setup.Supply.OpenCircuitVolts));
        table.Add(new Markup("Supply resistance <var>R</var><sub>s</sub>"), Ohms(study.Setup.Supply.SourceOhms));
        table.Add("Load torque at the beginning", LoadText(study.Setup.Load));
        AddField(table, study);
        if (study.Setup.BrakeOhms is double brakeOhms) table.Add("Brake resistor, without the armature", Ohms(brakeOhms));
        page.Table(table);
        WriteConstant(page, study);
        WriteConsistency(page, study);
        ConstantChain.Write(page, study);
        MagnetisationPart.Write(page, study);
        page.EndSection();
    }

    // Letters of the windings: IEC 60034-8.
    private static string CircuitName(StartStudy study) => StudyMachine.Kind(study) switch
    {
        MachineKind.Series => "Armature circuit with the series winding, terminals A1–A2 and D1–D2",
        MachineKind.LongShuntCompound => "Armature circuit with the series winding, terminals A1–A2 and D1–D2",
        _ => "Armature circuit, terminals A1–A2",
    };

    private static void AddField(ReportTable table, StartStudy study)
    {
        if (study.Setup.Field is not FieldCircuit field) return;
        if (field.IsShunt) table.Add("Shunt winding, terminals E1–E2", field.SharedOhms > 0 ? "on the machine’s own supply, behind the series winding" : "on the machine’s own supply");
        else table.Add("Field supply, terminals F1–F2", Volts(field.SupplyVolts));
        table.Add("Field circuit", Ohms(field.Ohms));
        if (field.SharedOhms > 0) table.Add("Series winding, which carries both currents, terminals D1–D2", Ohms(field.SharedOhms));
        table.Add("Field inductance", Plain(field.Henries) + "\u00A0H");
        table.Add("Field current, settled", Amps(StudyMachine.StandingFieldAmps(study)));
    }

    /// <summary>The load's law with its numbers.</summary>
    public static Markup LoadText(Load load)
    {
        List<string> parts = [];
        if (load.ConstantNewtonMetres != 0) parts.Add(Torque(load.ConstantNewtonMetres));
        if (load.ViscousNewtonMetreSeconds != 0) parts.Add(Plain(load.ViscousNewtonMetreSeconds) + "\u00A0N\u00A0m\u00A0s · <var>w</var>");
        if (load.FanNewtonMetreSecondsSquared != 0) parts.Add(Plain(load.FanNewtonMetreSecondsSquared) + "\u00A0N\u00A0m\u00A0s² · <var>w</var>²");
        if (load.Table is LoadTable table) parts.Add($"a table of {table.Curve.Xs.Count} points up to {Plain(table.LastRadPerSec * 30 / Math.PI)}\u00A0r/min");
        if (load.HoistNewtonMetres != 0) parts.Add($"a hoist’s {Torque(load.HoistNewtonMetres)}");
        return new Markup(parts.Count == 0 ? "none" : string.Join(" + ", parts));
    }

    private static void WriteConstant(ReportPage page, StartStudy study)
    {
        Plate plate = study.Plate;
        Machine machine = study.Setup.Machine;
        page.Heading("One constant, two jobs");
        page.Paragraph($"The machine constant <var>k</var> turns speed into back-EMF, <var>E</var> = <var>k</var> <var>w</var>, and current into torque, <var>T</var> = <var>k</var> <var>I</var>. At {Constant(machine.Constant)} every 100 r/min make {Volts(machine.Constant * 100 * Math.PI / 30)} and every ampere makes {Torque(machine.Constant)}.{(StudyMachine.FollowsArmature(study) ? $" That is the rated point; the flux follows the armature current, so that at {Amps(study.Design.PeakAmps)} it is {Constant(StudyMachine.ConstantAt(study, study.Design.PeakAmps))} and at {Amps(study.Design.SwitchingAmps)} {Constant(StudyMachine.ConstantAt(study, study.Design.SwitchingAmps))}." : "")}");
        if (plate.ConstantSource.Length > 0) page.Paragraph($"Where it comes from: {plate.ConstantSource}");
    }

    private static void WriteConsistency(ReportPage page, StartStudy study)
    {
        Plate plate = study.Plate;
        Machine machine = study.Setup.Machine;
        double circuitOhms = study.DesignInput.ArmatureOhms;
        if (plate.RatedVolts is not double volts || plate.RatedAmps is not double amps) return;
        double input = volts * amps;
        double heat = amps * amps * circuitOhms + amps * machine.BrushDropVolts;
        ReportTable table = new("Does the plate agree with itself?", ["Figure", "Sum", "Result"]);
        table.Add("Armature input", ReportPage.Text($"{Volts(volts)} · {Amps(amps)}"), Watts(input));
        table.Add("Heat of armature circuit and brushes", ReportPage.Text($"({Amps(amps)})² · {Ohms(circuitOhms)} + {Amps(amps)} · {Volts(machine.BrushDropVolts)}"), Watts(heat));
        table.Add("Drop in the armature circuit", ReportPage.Text($"{Amps(amps)} · {Ohms(circuitOhms)} of {Volts(volts)}"), Percent(amps * circuitOhms / volts * 100));
        if (plate.RatedWatts is double watts)
        {
            table.Add(study.Setup.Machine.Flux is { FieldShare: 0 } ? "Efficiency" : "Efficiency, field not counted", ReportPage.Text($"{Watts(watts)} / {Watts(input)}"), Percent(watts / input * 100));
            table.Add("Left for friction, windage and iron", ReportPage.Text($"{Watts(input)} − {Watts(heat)} − {Watts(watts)}"), Watts(input - heat - watts));
            if (plate.RatedRadPerSec is double speed)
            {
                table.Add("Rated shaft torque", ReportPage.Text($"{Watts(watts)} / {Plain(speed)}\u00A0rad/s"), Torque(watts / speed));
                table.Add("Torque that the current makes", ReportPage.Text($"{Constant(machine.Constant)} · {Amps(amps)}"), Torque(machine.Constant * amps));
            }
        }

        page.Table(table);
        if (plate.RatedWatts is double rated && input - heat - rated < 0)
        {
            page.Paragraph($"<strong>The plate does not agree with itself:</strong> input less armature heat is below the rated shaft power. Check the armature resistance and the rated current.");
        }
    }

    private static void AddKnown(ReportTable table, string name, double? number, Func<double, string> format)
    {
        if (number is double known) table.Add(name, format(known));
    }
}
