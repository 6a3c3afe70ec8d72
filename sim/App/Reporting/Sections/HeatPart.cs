using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Records;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>How hot sections and windings become over one start, many starts and the duty.</summary>
internal static class HeatPart
{
    public static void Write(ReportPage page, DutyStudy study, Record coldStart)
    {
        page.Heading("Heat of the starts");
        page.Paragraph($"Every start was simulated from the temperatures at which it begins, with the resistances that they bring; what lies between is closed form. Surroundings: {Celsius(study.AmbientCelsius)}.");
        page.Add(Figure.Of(
            "one-start-plot",
            "Mean temperatures of the hottest section and of the armature winding over one start from cold.",
            ReportPage.Text($"One start from cold: the section that is hottest at each moment, and the armature winding where it warms up."),
            (250, 240),
            size => OneStartPlot.Build(study, coldStart, size)));
        ReportTable table = new("Hottest spots, °C", ["Part", "Limit", "One start from cold", $"{study.StartsPerHour} starts an hour, for ever", "In the duty"]);
        for (int i = 0; i < study.Bodies.Count; i++)
        {
            WarmBody body = study.Bodies[i];
            object Spot(double? mean) => mean is double celsius ? body.HotSpot(celsius, study.AmbientCelsius) : "–";
            table.Add(body.Name, Spot(body.LimitCelsius), Spot(study.FirstStart.HighestCelsius[i]), Spot(study.AtStartsPerHour?.HighestCelsius[i]), Spot(study.Duty?.Steady?.HighestCelsius[i]));
        }

        page.Table(table);
        if (study.Bodies.Any(body => body.LimitCelsius != null)) WriteCounts(page, study);
        if (study.Duty != null) WriteDuty(page, study, study.Duty);
    }

    private static void WriteCounts(ReportPage page, DutyStudy study)
    {
        string row = study.ConsecutiveStarts is int count ? $"{count} starts of {Seconds(study.StartSeconds)} are permitted; in the next one {study.ConsecutiveExcess}" : $"{DutyStudy.MostConsecutive} starts and more are permitted";
        page.Paragraph($"In a row from cold, without a rest, {row}. For ever, evenly spread and with {Seconds(study.RunSeconds)} from start to stop, {study.StartsPerHour} starts an hour are permitted; {(study.StartsExcess.Length > 0 ? $"with one more {study.StartsExcess}" : "an hour has no room for one more")}.");
    }

    private static void WriteDuty(ReportPage page, DutyStudy study, GivenDuty duty)
    {
        page.Add(Figure.Of(
            "duty-plot",
            $"Temperatures of the duty from cold on: {duty.FromCold.Count} cycles of {Seconds(duty.Times.Seconds)}, hottest section and windings with their limits.",
            ReportPage.Text($"The duty from cold on. Full line: hottest section; dashed: windings; dotted: limits."),
            (300, 280),
            size => DutyPlot.Build(study, duty, size)));
        page.Paragraph($"The duty of {Seconds(duty.Times.RunSeconds)} run and {Seconds(duty.Times.RestSeconds)} rest, {Plain(duty.Times.StartsPerHour)} starts an hour, is {duty.Class.Designation} by IEC 60034-1: {duty.Class.Why}. It is {(duty.Excess.Length == 0 ? "permitted for ever" : "not permitted: " + duty.Excess)}.");
    }
}
