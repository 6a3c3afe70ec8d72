using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>Speed against torque on the full supply, and why it is as it is.</summary>
internal static class RegulationSection
{
    private static readonly double[] Parts = [0.1, 0.25, 0.5, 0.75, 1, 1.25];

    public static void Write(ReportPage page, StartStudy study)
    {
        Characteristic machine = StudyMachine.OnFullSupply(study);
        OperatingPoint none = machine.AtAmps(0), full = machine.AtAmps(StudyMachine.FullLoadAmps(study));
        OperatingPoint light = machine.AtTorque(0.1 * full.TorqueNewtonMetres) ?? none;
        bool isSeries = StudyMachine.Kind(study) == MachineKind.Series;
        page.BeginSection("regulation", "How it holds its speed");
        page.Paragraph(Words(study, machine, none, light, full));
        (string, OperatingPoint)[] marked = [isSeries ? ("10 % of full-load torque", light) : ("no load", none), ("full load", full)];
        page.Add(Figure.Of(
            "regulation-plot",
            $"Speed against torque on the full supply: from {Rpm(marked[0].Item2.Rpm)} at {(isSeries ? "a tenth of the full-load torque" : "no load")} to {Rpm(full.Rpm)} at {Torque(full.TorqueNewtonMetres)}.",
            ReportPage.Text($"The machine on the full supply, every section out, the supply’s resistance included. Full load: the torque of {StudyMachine.FullLoadName(study)}, {Amps(full.ArmatureAmps)}. Long dashes: the load of the case at the beginning."),
            (330, 310),
            size => RegulationPlot.Build(machine, marked, study.Setup.Load, size)));
        WriteTable(page, machine, none, full, isSeries);
        if (isSeries) WriteDanger(page, none, light);
        page.EndSection();
    }

    private static FormattableString Words(StartStudy study, Characteristic machine, OperatingPoint none, OperatingPoint light, OperatingPoint full) =>
        StudyMachine.Kind(study) switch
        {
            MachineKind.Series => Series(study, light, full),
            MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound => Compound(study, none, full),
            _ => Stiff(study, machine, none, full),
        };

    private static FormattableString Stiff(StartStudy study, Characteristic machine, OperatingPoint none, OperatingPoint full)
    {
        Markup flux = StudyMachine.FollowsArmature(study) && full.Constant != none.Constant
            ? ReportPage.Text($"Armature reaction takes a little flux, <var>k</var> from {Constant(none.Constant)} to {Constant(full.Constant)}, and that alone would raise the speed: at constant flux it would lose {Rpm((none.BackEmfVolts - full.BackEmfVolts) / none.Constant * 30 / Math.PI)}.")
            : ReportPage.Text($"The flux is the same at every load, so the loss is that of the resistance alone: {full.ArmatureAmps} · {machine.CircuitOhms} = {Volts(full.ArmatureAmps * machine.CircuitOhms)} of {Volts(machine.DrivingVolts)}.");
        return $"<strong>{(none.Rpm > full.Rpm ? "Stiff." : "More than stiff.")}</strong> From no load to {Torque(full.TorqueNewtonMetres)} of full load the speed {Change(none.Rpm - full.Rpm, none.Rpm)}, from {Rpm(none.Rpm)} to {Rpm(full.Rpm)}. The back-EMF must lie below the supply by no more than the small drop of the armature circuit, and with a flux that hardly moves the speed goes with the back-EMF. {flux}";
    }

    private static FormattableString Series(StartStudy study, OperatingPoint light, OperatingPoint full) =>
        $"<strong>Soft.</strong> At full load of {Torque(full.TorqueNewtonMetres)} it turns {Rpm(full.Rpm)}; at a tenth of that torque {Rpm(light.Rpm)}, {Plain(light.Rpm / full.Rpm)} times as fast. The armature current is the field current: a tenth of the torque needs {Amps(light.ArmatureAmps)} instead of {Amps(full.ArmatureAmps)}, and with it <var>k</var> falls from {Constant(full.Constant)} to {Constant(light.Constant)}. The back-EMF must still come near the supply, so what the flux loses the speed must make up. The other side of this is the strong pull at a start: at the peak current of {Amps(study.Design.PeakAmps)} an ampere makes {Torque(StudyMachine.ConstantAt(study, study.Design.PeakAmps))}.";

    private static FormattableString Compound(StartStudy study, OperatingPoint none, OperatingPoint full)
    {
        bool isDifferential = study.Setup.Machine.Flux!.ArmatureShare < 0;
        double stiffRpm = full.BackEmfVolts / none.Constant * 30 / Math.PI;
        string character = isDifferential ? "Differential." : "Between shunt and series.";
        Markup why = isDifferential
            ? ReportPage.Text($"The series winding works against the shunt winding: <var>k</var> falls from {Constant(none.Constant)} without load to {Constant(full.Constant)}. With the no-load flux full load would be at {Rpm(stiffRpm)}. Less flux at more load holds the speed up, but an overload can weaken the flux so far that the machine runs away or stalls.")
            : ReportPage.Text($"The shunt winding keeps <var>k</var> = {Constant(none.Constant)} without load, so there is a no-load speed; the series winding raises it to {Constant(full.Constant)} at full load. With the no-load flux alone full load would be at {Rpm(stiffRpm)}: the rest of the loss is the price of the extra torque per ampere.");
        return $"<strong>{character}</strong> From no load to {Torque(full.TorqueNewtonMetres)} of full load the speed {Change(none.Rpm - full.Rpm, none.Rpm)}, from {Rpm(none.Rpm)} to {Rpm(full.Rpm)}. {why}";
    }

    private static string Change(double lostRpm, double ofRpm) =>
        lostRpm >= 0 ? $"falls by {Rpm(lostRpm)}, {Percent(lostRpm / ofRpm * 100)}" : $"rises by {Rpm(-lostRpm)}, {Percent(-lostRpm / ofRpm * 100)}";

    private static void WriteTable(ReportPage page, Characteristic machine, OperatingPoint none, OperatingPoint full, bool isSeries)
    {
        ReportTable table = new("Steady points on the full supply", ["Part of full-load torque", "Torque, N\u00A0m", "Current, A", new Markup("<var>k</var>, V\u00A0s/rad"), "Back-EMF, V", "Speed, r/min"]);
        IEnumerable<(string, OperatingPoint?)> rows = Parts.Select(part => (Percent(part * 100), part == 1 ? full : machine.AtTorque(part * full.TorqueNewtonMetres)));
        if (!isSeries) Add("none", none);
        foreach ((string name, OperatingPoint? point) in rows) Add(name, point);
        page.Table(table);

        void Add(string name, OperatingPoint? point)
        {
            if (point != null) table.Add(name, point.TorqueNewtonMetres, point.ArmatureAmps, point.Constant, point.BackEmfVolts, point.Rpm);
        }
    }

    private static void WriteDanger(ReportPage page, OperatingPoint none, OperatingPoint light)
    {
        page.Line($"<section class=\"warning\" aria-label=\"Runaway\">\n<p><strong>Never without load.</strong> A tenth of the torque already means {Rpm(light.Rpm)}. With no load at all nothing but friction ends the rise: what the iron keeps without current, {Constant(none.Constant)}, would balance the supply only at {Rpm(none.Rpm)}, and the armature bursts long before. Couple the load rigidly or by gears, never by a belt, and fit an overspeed trip.</p>\n</section>");
    }
}
