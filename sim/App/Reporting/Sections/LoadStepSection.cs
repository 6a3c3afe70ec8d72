using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The second scene: a step of the load, which the machine answers by itself.</summary>
internal static class LoadStepSection
{
    public static void Write(ReportPage page, StartStudy study, LoadStepScene scene)
    {
        LoadStepResponse response = scene.Machine;
        page.BeginSection("loadstep", "When the load changes");
        string usual = study.Plate is { RatedWatts: not null, RatedRadPerSec: not null } ? "a step of half the rated torque" : "a step of half the torque at the switching current";
        string origin = scene.EventSeconds is not double at ? usual
            : scene.EventOverSeconds > 0 ? $"at once what the case’s event at {Seconds(at)} does over {Seconds(scene.EventOverSeconds)}"
            : $"the step of the case’s event at {Seconds(at)}";
        page.Paragraph($"{Opening(study, scene)} No contact moves any more; the controller only watches. Now the load’s constant torque goes from {Torque(scene.LoadBefore.ConstantNewtonMetres)} to {Torque(scene.LoadAfter.ConstantNewtonMetres)}, {origin}. Nobody tells the machine to take more current. The back-EMF does.");
        if (response.Runs) WriteChain(page, study, scene);
        else page.Paragraph($"<strong>This machine cannot carry that load:</strong> even at rest its current of {Amps(response.After.ArmatureAmps)} makes too little torque, and it stalls.");
        WriteStates(page, response);
        page.Add(Figure.Of(
            "loadstep-plot",
            $"Speed, back-EMF and current after the load step: speed from {Rpm(response.Before.Rpm)} to {Rpm(response.After.Rpm)}, back-EMF from {Volts(response.Before.BackEmfVolts)} to {Volts(response.After.BackEmfVolts)}, current from {Amps(response.Before.ArmatureAmps)} to {Amps(response.After.ArmatureAmps)}.",
            ReportPage.Text($"Speed, back-EMF and current. Dotted: the step. Circle: {Seconds(response.OnTheWay.Seconds)} after it. The scales do not begin at zero."),
            (560, 560),
            size => LoadStepPlot.Build(response, size)));
        WriteTwoJobs(page, study, response);
        WriteComparison(page, scene);
        page.EndSection();
    }

    // The scene is one of its own: the run of the case may have ended before, or have stepped its load during the start.
    private static string Opening(StartStudy study, LoadStepScene scene)
    {
        const string Picture = "Picture the machine running on the full supply, every section out.";
        if (StartCourse.FullSupplySeconds(study.Result) is not double seconds) return Picture + " The run of this case did not get there.";
        return scene.EventSeconds < seconds ? Picture + " In the run of this case the load changed before that." : "The start is over and all resistance is out.";
    }

    private static void WriteChain(ReportPage page, StartStudy study, LoadStepScene scene)
    {
        LoadStepResponse response = scene.Machine;
        RunningPoint before = response.Before, now = response.RightAfter, way = response.OnTheWay, after = response.After;
        double missing = now.LoadTorqueNewtonMetres - now.TorqueNewtonMetres;
        page.Heading("Cause and effect");
        page.Line($"<ol class=\"chain\">");
        page.Line($"<li><strong>The load rises</strong> from {Torque(before.LoadTorqueNewtonMetres)} to {Torque(now.LoadTorqueNewtonMetres)}. Speed, back-EMF, current and torque are still what they were: {Torque(missing)} are missing.</li>");
        page.Line($"<li><strong>The speed falls,</strong> at first by {Rpm(missing / study.Setup.Machine.InertiaKgM2 * 30 / System.Math.PI)} every second. After {Seconds(way.Seconds)} it is {Rpm(way.Rpm)} instead of {Rpm(before.Rpm)}.</li>");
        page.Line($"<li><strong>The back-EMF falls</strong> with it, from {Volts(before.BackEmfVolts)} to {Volts(way.BackEmfVolts)}, so more of the supply is left for the armature.</li>");
        page.Line($"<li><strong>The current rises</strong> from {Amps(before.ArmatureAmps)} to {Amps(way.ArmatureAmps)}.</li>");
        page.Line($"<li><strong>The torque rises</strong> {WithWhat(study, before, after)}, from {Torque(before.TorqueNewtonMetres)} to {Torque(way.TorqueNewtonMetres)}; {Torque(way.LoadTorqueNewtonMetres - way.TorqueNewtonMetres)} are still missing.</li>");
        page.Line($"<li><strong>Balance:</strong> it goes on until the torque is the load’s again, at {Rpm(after.Rpm)}, {Volts(after.BackEmfVolts)}, {Amps(after.ArmatureAmps)} and {Torque(after.TorqueNewtonMetres)}. After {Seconds(response.SettlingSeconds)} the speed is within 2 % of the whole change. It has lost {Rpm(response.DropRpm)}, {Percent(response.DropPercent)}.</li>");
        page.Line($"</ol>");
    }

    private static string WithWhat(StartStudy study, RunningPoint before, RunningPoint after)
    {
        bool fluxRises = StudyMachine.FollowsArmature(study) && before.ArmatureAmps > 0 && after.TorqueNewtonMetres * before.ArmatureAmps > before.TorqueNewtonMetres * after.ArmatureAmps * (1 + 1e-6);
        return fluxRises ? "with the current and with the flux that it strengthens" : "with the current";
    }

    private static void WriteStates(ReportPage page, LoadStepResponse response)
    {
        ReportTable table = new(
            "The machine at four moments", ["Quantity", "Before", "Right after", ReportPage.Text($"After {Seconds(response.OnTheWay.Seconds)}"), "Settled"]);
        RunningPoint[] points = [response.Before, response.RightAfter, response.OnTheWay, response.After];
        AddRow(table, "Load torque, N\u00A0m", points, point => point.LoadTorqueNewtonMetres);
        AddRow(table, "Speed, r/min", points, point => point.Rpm);
        AddRow(table, "Back-EMF, V", points, point => point.BackEmfVolts);
        AddRow(table, "Current, A", points, point => point.ArmatureAmps);
        AddRow(table, "Torque of the machine, N\u00A0m", points, point => point.TorqueNewtonMetres);
        AddRow(table, "Lost in the supply, V", points, point => point.SourceDropVolts);
        AddRow(table, "Voltage at the terminals, V", points, point => point.TerminalVolts);
        page.Table(table);
        page.Note($"The third column lies a third of the machine’s time constant after the step; the time constant, {Seconds(response.TimeConstantSeconds)}, is the time for 63 % of the change of speed.");
    }

    private static void AddRow(ReportTable table, string name, RunningPoint[] points, System.Func<RunningPoint, double> number) =>
        table.Add(name, number(points[0]), number(points[1]), number(points[2]), number(points[3]));

    private static void WriteTwoJobs(ReportPage page, StartStudy study, LoadStepResponse response)
    {
        Machine machine = study.Setup.Machine;
        Characteristic machineNow = StudyMachine.OnFullSupply(study);
        double volts = study.Setup.Supply.OpenCircuitVolts, ohms = machineNow.CircuitOhms;
        RunningPoint before = response.Before;
        double gap = machineNow.DrivingVolts - before.BackEmfVolts;
        page.Heading("Back-EMF does both jobs");
        page.List(
        [
            $"<strong>It limits the current.</strong> Of the {Volts(volts)} supply, {Volts(before.BackEmfVolts)} are met by back-EMF and {Volts(machine.BrushDropVolts)} by the brushes{FieldLoss(study, volts - machine.BrushDropVolts - machineNow.DrivingVolts)}. Only {Volts(gap)} drive a current: {gap} / {ohms} = {Amps(gap / ohms)}. Without back-EMF it would be {Amps(machineNow.StandstillAmps)}.",
            $"<strong>It holds the speed.</strong> {HoldsSpeed(study, machineNow, before)}",
        ]);
    }

    private static string FieldLoss(StartStudy study, double volts) =>
        volts > 1e-9 ? $"; the field current loses {Volts(volts)} in {(study.Setup.Field is { SharedOhms: > 0 } ? "supply and series winding" : "the supply")}" : "";

    // The slope of the characteristic where the machine runs: with a flux that follows the current it is not E / R.
    private static Markup HoldsSpeed(StartStudy study, Characteristic machine, RunningPoint settled)
    {
        // Small differences: both points from the same curve, not one of them from the solver.
        OperatingPoint before = machine.AtAmps(settled.ArmatureAmps);
        if (machine.AtSpeed(0.99 * before.SpeedRadPerSec) is not OperatingPoint slower || before.SpeedRadPerSec <= 0)
        {
            return ReportPage.Text($"A loss of speed is a loss of back-EMF, and that is more current and more torque.");
        }

        double lost = before.BackEmfVolts - slower.BackEmfVolts;
        double moreAmps = slower.ArmatureAmps - before.ArmatureAmps, moreTorque = slower.TorqueNewtonMetres - before.TorqueNewtonMetres;
        Markup gains = ReportPage.Text($"One per cent less speed is {Volts(lost)} less back-EMF, {Amps(moreAmps)} more current and {Torque(moreTorque)} more torque.");
        if (!StudyMachine.FollowsArmature(study) || slower.Constant == before.Constant) return ReportPage.Text($"{gains} So a small loss of speed is enough to carry a large load.");
        Markup flux = ReportPage.Text($"The flux moves with the current: <var>k</var> goes from {Constant(before.Constant)} to {Constant(slower.Constant)}.");
        return slower.Constant > before.Constant
            ? ReportPage.Text($"{gains} {flux} The stronger flux makes up for {Volts(0.01 * before.BackEmfVolts - lost)} of the {Volts(0.01 * before.BackEmfVolts)} that the speed alone would have cost, so the current rises less than at constant flux and the speed must fall further, while every ampere makes more torque.")
            : ReportPage.Text($"{gains} {flux} The weaker flux takes another {Volts(lost - 0.01 * before.BackEmfVolts)} of back-EMF, so the current rises more than at constant flux and the speed falls less.");
    }

    private static void WriteComparison(ReportPage page, LoadStepScene scene)
    {
        LoadStepResponse own = scene.Machine, weak = scene.WeakerMachine;
        page.Heading("The same step with ten times the armature resistance");
        page.Paragraph($"More resistance weakens the grip: the same loss of back-EMF brings less current, so the speed must fall further before the torque is there.");
        ReportTable table = new("Two machines, each from its own steady state", ["Figure", "This machine", "10 times the resistance"]);
        table.Add("Armature circuit", Ohms(own.ArmatureOhms), Ohms(weak.ArmatureOhms));
        table.Add("Speed before", Rpm(own.Before.Rpm), Rpm(weak.Before.Rpm));
        table.Add("Speed after", Rpm(own.After.Rpm), weak.Runs ? Rpm(weak.After.Rpm) : "stalls");
        table.Add("Loss of speed", Rpm(own.DropRpm), Rpm(weak.DropRpm));
        table.Add("Loss of speed, part of before", Percent(own.DropPercent), Percent(weak.DropPercent));
        table.Add("Current before", Amps(own.Before.ArmatureAmps), Amps(weak.Before.ArmatureAmps));
        table.Add("Current after", Amps(own.After.ArmatureAmps), Amps(weak.After.ArmatureAmps));
        table.Add("Time to settle", Seconds(own.SettlingSeconds), Seconds(weak.SettlingSeconds));
        page.Table(table);
        page.Add(Figure.Of(
            "compare-plot",
            $"Speed in per cent of the speed before the step: this machine loses {Percent(own.DropPercent)}, the one with ten times the armature resistance {Percent(weak.DropPercent)}.",
            ReportPage.Text($"Full line: this machine. Dashed: ten times the armature resistance. Each in per cent of its own speed before the step."),
            (320, 300),
            size => LoadStepPlot.BuildComparison(scene, size)));
        page.Paragraph($"That is also why the starting resistors must be out while the machine works: left in, they would cost both energy and a steady speed.");
    }
}
