using System.Globalization;
using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The simulated start: plots, cutouts and what the controller did and why.</summary>
internal static class StartSection
{
    private const int MostRows = 80;

    public static void Write(ReportPage page, StartStudy study)
    {
        page.BeginSection("start", "The start");
        double end = StartCourse.ShownSeconds(study);
        bool hasField = study.Setup.Field != null;
        page.Add(Figure.Of(
            "start-plot",
            $"Armature current, speed, back-EMF{(hasField ? ", torque and field current" : " and torque")} against time over the first {Seconds(end)}. The current rises to a peak at the start and after each of the {study.Result.Cutouts.Count} cutouts and stays at or below {Amps(study.Result.PeakAmps)}.",
            ReportPage.Text($"The start. Dotted upright lines and circles: contacts of the stages, with their numbers where there is room; all stand in the table of cutouts. Dashed level lines: the permitted peak <var>I</var><sub>1</sub>, the switching current <var>I</var><sub>2</sub> and the designed thresholds, each with its stage and tied to its words on the right. The contact follows the decision after its closing time. The back-EMF has grown past the threshold by then, which keeps the peak a little below the designed one.{FieldWords(study)}{Trips(study.Result, end)}"),
            StartPlot.Heights(study),
            size => StartPlot.Build(study, size, end)));
        if (end < study.Setup.DurationSeconds) WriteOverview(page, study);
        WriteCutouts(page, study);
        WriteTimeline(page, study);
        page.EndSection();
    }

    private static string FieldWords(StartStudy study)
    {
        if (study.Setup.Field is not FieldCircuit field) return "";
        string least = study.Settings.MinimumFieldAmps > 0 ? $" Below the dashed {Amps(study.Settings.MinimumFieldAmps)} the armature is not put on the line, and a running one is tripped." : "";
        double seconds = field.Henries / (field.Ohms + field.SharedOhms);
        string builds = field.HasContactor && seconds > 0 ? $"it builds up with the winding’s {Plain(field.Henries)}\u00A0H / {Plain(field.Ohms + field.SharedOhms)}\u00A0Ω = {Seconds(seconds)} to" : "on the full supply it is";
        return $" Bottom: the field current; {builds} {Amps(StudyMachine.StandingFieldAmps(study))}.{least}";
    }

    private static void WriteOverview(ReportPage page, StartStudy study)
    {
        string events = string.Join("; ", study.Setup.Events.Select((happening, i) => $"event {i + 1} at {Seconds(happening.AtSeconds)}"));
        page.Add(Figure.Of(
            "overview",
            $"Speed and current over the whole run of {Seconds(study.Setup.DurationSeconds)}. {events}",
            ReportPage.Text($"The whole run. {(events.Length > 0 ? "Dashed upright lines with numbers: " + events + ", see the timeline." : "")}{Trips(study.Result, study.Setup.DurationSeconds)}"),
            (370, 400),
            size => OverviewPlot.Build(study, size)));
    }

    private static string Trips(RunResult result, double end)
    {
        string[] trips = [.. result.Faults.Where(fault => fault.Seconds <= end).Select(fault => $"{fault.Name} at {Seconds(fault.Seconds)}")];
        return trips.Length == 0 ? "" : $" Solid upright line: the trip, {string.Join("; ", trips)}.";
    }

    private static void WriteCutouts(ReportPage page, StartStudy study)
    {
        if (study.Result.Cutouts.Count == 0) return;
        ReportTable table = new(
            "Cutouts as they happened",
            ["Stage", "Threshold crossed, s", "Decided, s", "Contact closed, s", "Back-EMF then, V", "Designed threshold, V", "Speed, r/min", "Current before, A", "Peak after, A", "Designed peak, A"],
            "figures tight");
        foreach (Cutout cutout in study.Result.Cutouts)
        {
            DesignedStage stage = study.Design.Stages[cutout.Stage - 1];
            table.Add(
                cutout.Stage, cutout.ThresholdSeconds, cutout.CommandSeconds, cutout.Seconds, cutout.BackEmfVolts, stage.CutoutVolts, cutout.Rpm, cutout.AmpsBefore,
                cutout.PeakAmpsAfter, StarterSection.NextPeakAmps(study.Design, cutout.Stage - 1));
        }

        page.Table(table);
    }

    private static void WriteTimeline(ReportPage page, StartStudy study)
    {
        page.Heading("What the controller did and why");
        ReportTable table = new("Timeline", ["Time, s", "Phase", "Stage", "Current, A", "What and why"], "words wrap timeline");
        string format = study.Setup.PeriodMicroseconds % 1000 == 0 ? "F3" : "F5";
        foreach (TimelineEntry entry in study.Result.Timeline.Take(MostRows))
        {
            table.Add(entry.Seconds.ToString(format, CultureInfo.InvariantCulture).Replace('-', '\u2212'), entry.Phase, entry.Stage, entry.ArmatureAmps, ReasonText.Sentence(entry));
            if (entry.Fault is FaultEntry { Snapshot: not null } fault) table.Add("", "", "", "", "read then: " + FaultText.Surroundings(fault));
        }

        page.Table(table);
        int left = study.Result.Timeline.Count - MostRows;
        if (left > 0) page.Note($"{left} more entries are left out here; the record has them all.");
        page.Note($"Voltages in this table are those of the controller: its estimate of the back-EMF from speed, and its threshold for the supply measured on that tick{(study.DesignInput.Flux == null ? "" : ", both at the flux of the permitted peak current; the cutouts above are at the flux of the moment")}. Stage {study.Design.StageCount + 1} stands for the armature alone. Times and currents are those of the tick.");
    }
}
