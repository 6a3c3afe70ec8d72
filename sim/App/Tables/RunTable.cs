using Spectre.Console;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StartCourse = StarterCtl.App.Reporting.StartCourse;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>A run as people read it.</summary>
internal static class RunTable
{
    /// <summary>Prints timeline, figures and verdict.</summary>
    public static void Show(IAnsiConsole console, StartStudy study)
    {
        console.MarkupLineInterpolated($"[bold]{study.Title}: what the controller did and why[/]");
        console.Write(Timeline(study.Result));
        if (study.Result.Cutouts.Count > 0) console.Write(Cutouts(study.Result));
        else console.WriteLine("No stage was cut out.");
        ShowFigures(console, study.Result, study.Setup.Contactors.ArcVolts > 0);
        if (study.Result.Temperatures.Count > 0) console.Write(Temperatures(study.Result));
        foreach (FaultEntry fault in study.Result.Faults) ShowFault(console, fault);
        ShowVerdict(console, study.Verdict);
    }

    private static Table Timeline(RunResult result)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Number("s"));
        table.AddColumn(Tables.Word("phase"));
        table.AddColumn(Tables.Number("A"));
        table.AddColumn(new TableColumn("why").Padding(2, 0));
        foreach (TimelineEntry entry in result.Timeline)
        {
            table.AddRow(
                Markup.Escape(Seconds(entry.Seconds)),
                Markup.Escape(entry.Phase.ToString()),
                Markup.Escape(Text.Number(entry.ArmatureAmps)),
                Markup.Escape(ReasonText.Sentence(entry)));
            if (entry.Fault is FaultEntry { Snapshot: not null } fault) table.AddRow("", "", "", Markup.Escape("read then: " + FaultText.Surroundings(fault)));
        }

        return table;
    }

    private static Table Cutouts(RunResult result)
    {
        Table table = Tables.New();
        foreach (string heading in (string[])["cutout\nof stage", "threshold\npassed s", "contact\nclosed s", "back-EMF\nV", "r/min", "current\nbefore A", "peak\nafter A"])
        {
            table.AddColumn(Tables.Number(heading));
        }

        foreach (Cutout cutout in result.Cutouts)
        {
            table.AddRow(
                Text.Number(cutout.Stage),
                Seconds(cutout.ThresholdSeconds),
                Seconds(cutout.Seconds),
                Text.Number(cutout.BackEmfVolts),
                Text.Number(cutout.Rpm),
                Text.Number(cutout.AmpsBefore),
                Text.Number(cutout.PeakAmpsAfter));
        }

        return table;
    }

    private static void ShowFigures(IAnsiConsole console, RunResult result, bool hasArcs)
    {
        string toSpeed = !StartCourse.IsPowered(result) ? "it ended with the line open"
            : result.SecondsToSpeed is double seconds ? $"{Text.Number(seconds)} s to 95 % of its final speed"
            : "it ended at rest or slower than it began";
        console.MarkupLineInterpolated($"Peak {Text.Number(result.PeakAmps)} A and {Text.Number(result.PeakTorqueNewtonMetres)} N m; {toSpeed}; at the end {Text.Number(result.FinalRpm)} r/min at {Text.Number(result.FinalAmps)} A.");
        double sections = 0;
        foreach (double joules in result.SectionJoules) sections += joules;
        console.MarkupLineInterpolated($"Of {Text.Number(result.SupplyJoules)} J from the supply: sections {Text.Number(sections)} J, armature {Text.Number(result.ArmatureJoules)} J, load {Text.Number(result.LoadJoules)} J, kinetic {Text.Number(result.KineticJoules)} J{Part("brake", result.BrakeJoules)}{Part("arcs", hasArcs ? result.ArcJoules : 0)}{Part("shunt field", result.FieldJoules + result.FieldMagneticJoules)}.");

        static string Part(string name, double joules) => joules == 0 ? "" : $", {name} {Text.Number(joules)} J";
    }

    private static Table Temperatures(RunResult result)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("temperature"));
        foreach (string heading in (string[])["at the\nbeginning degC", "highest\ndegC", "at the\nend degC"]) table.AddColumn(Tables.Number(heading));
        foreach (BodyTemperature body in result.Temperatures)
        {
            table.AddRow(body.Body, Text.Number(body.StartCelsius), Text.Number(body.HighestCelsius), Text.Number(body.FinalCelsius));
        }

        return table;
    }

    private static void ShowFault(IAnsiConsole console, FaultEntry fault)
    {
        FaultRow text = FaultTable.RowOf(fault.Id);
        string measured = FaultText.Measured(fault);
        console.MarkupLineInterpolated($"[red]Fault at {Seconds(fault.Seconds)} s: {text.Name}{(measured.Length > 0 ? ", " + measured : "")}.[/] {text.Cause} {text.Done}");
        if (text.Severity == FaultSeverity.MayBeLive) console.MarkupLineInterpolated($"  [bold]The motor may still be live.[/]");
        console.MarkupLineInterpolated($"  Check: {text.Check}");
    }

    private static void ShowVerdict(IAnsiConsole console, Verdict verdict)
    {
        foreach (LimitCheck check in verdict.Checks)
        {
            console.MarkupLineInterpolated($"  {(check.Passed ? "pass" : "FAIL")}  {check.Name}: {check.Seen}, {check.Limit}");
        }

        console.MarkupLineInterpolated($"[bold]Verdict: {verdict.Word}[/]");
    }

    private static string Seconds(double seconds) => seconds.ToString("F3", System.Globalization.CultureInfo.InvariantCulture);
}
