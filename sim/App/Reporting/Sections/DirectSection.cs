using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The same machine switched straight on.</summary>
internal static class DirectSection
{
    public static void Write(ReportPage page, StartStudy study, DirectStart direct)
    {
        double driving = study.Design.SupplyVolts - study.Design.BrushDropVolts;
        double source = study.Setup.Supply.SourceOhms;
        string growth = study.Setup.Machine.ArmatureHenries > 0 ? "and while the inductance lets the current grow the machine already gathers speed" : "and without inductance the current is there at once";
        page.BeginSection("direct", "Without a starter");
        page.Paragraph($"At rest the back-EMF is zero. Nothing but the armature’s own resistance would hold the current: ({study.Design.SupplyVolts} − {study.Design.BrushDropVolts}) / {study.Design.ArmatureOhms} = {Amps(study.Design.DirectStartAmps)}{TimesRated(study, study.Design.DirectStartAmps)}. {(source > 0 ? $"The supply’s resistance lowers that to {Plain(driving)} / {Plain(study.Design.ArmatureOhms + source)} = {Amps(driving / (study.Design.ArmatureOhms + source))}, {growth}" : $"With this supply’s constant voltage it would be that, {growth}")}: the simulated peak is {Amps(direct.PeakAmps)}.");
        page.Add(Figure.Of(
            "direct-plot",
            $"Armature current against time: without a starter it reaches {Amps(direct.PeakAmps)}, with the starter {Amps(study.Result.PeakAmps)}.",
            ReportPage.Text($"Dashed: switched straight on the supply. Full line: with the starter. Same machine, same load, same scale."),
            (330, 300),
            size => DirectPlot.Build(study, direct, size)));
        WriteTable(page, study, direct);
        page.EndSection();
    }

    private static void WriteTable(ReportPage page, StartStudy study, DirectStart direct)
    {
        RunResult result = study.Result;
        double shuntVolts = study.Setup.Supply.SourceOhms * DirectStart.ShuntAmps(study.Setup);
        double? secondsToSpeed = StartCourse.SecondsToSpeed(result);
        string ofWhat = StartCourse.IsPowered(result) && result.FinalRpm > 0 ? ", 95 % of the final speed" : "";
        ReportTable table = new(direct.Seconds == null ? "With and without" : $"With and without; time and heat up to {Rpm(direct.UpToRpm)}{ofWhat}", ["Figure", "Straight on", "With starter"]);
        table.Add("Peak current", Amps(direct.PeakAmps), Amps(result.PeakAmps));
        if (study.Plate.RatedAmps is double rated) table.Add("Peak current, times rated", direct.PeakAmps / rated, result.PeakAmps / rated);
        table.Add("Peak torque", Torque(direct.PeakTorqueNewtonMetres), Torque(result.PeakTorqueNewtonMetres));
        table.Add("Lowest voltage at the terminals", Volts(direct.LowestTerminalVolts), Volts(study.Setup.Supply.OpenCircuitVolts - shuntVolts - study.Setup.Supply.SourceOhms * result.PeakAmps));
        table.Add("Time", OrDash(direct.Seconds, Seconds), OrDash(secondsToSpeed, Seconds));
        if (direct.Seconds != null && secondsToSpeed is double end)
        {
            table.Add("Heat in armature and brushes", Joules(direct.ArmatureJoules), Joules(TraceHeat.ArmatureJoules(study, end)));
        }

        page.Table(table);
        if (direct.Seconds != null && secondsToSpeed != null)
        {
            page.Paragraph($"The starter makes the start slower and gentler. Most of the heat that the armature would take moves into the resistors, which are built for it: {Joules(result.SectionJoules.Sum())} in this start.");
        }

        page.Note($"The sum for the peak torque is <var>k</var> <var>I</var>{(StudyMachine.FollowsArmature(study) ? ", with the flux of that current" : "")}; a real machine’s commutator, iron and protection would not let such a current pass unharmed. The heat with the starter is summed over the simulated curve.");
    }

    private static string TimesRated(StartStudy study, double amps) =>
        study.Plate.RatedAmps is double rated ? $", {Plain(amps / rated)} times rated" : "";
}
