using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Ratings;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>Which overload class protects the motor without tripping its start.</summary>
internal static class OverloadPart
{
    public static void Write(ReportPage page, OverloadChoice choice)
    {
        page.Heading("Overload class");
        TripClass shown = choice.Chosen ?? choice.Set ?? TripClass.All[0];
        string limit = choice.Winding == null ? "the winding's limit is not known" : "what the winding bears";
        page.Add(Figure.Of(
            "time-current-plot",
            $"Time against current, both in decades: {limit}, the trip of class {shown.Name} from cold and from hot, the current of the start, the instantaneous trip.",
            ReportPage.Text($"Set to {Amps(choice.SettingAmps)}. Thick: until the winding has its limit of {OrDash(choice.LimitCelsius, Celsius)}. Thin: trip of class {shown.Name}. Full lines from cold, dashed ones from long running at the setting. The start: its current over the time since the line closed."),
            (430, 380),
            size => TimeCurrentPlot.Build(choice, shown, size)));
        ReportTable table = new("Trip classes of IEC 60947-4-1 held against the start; level of the controller’s thermal image, 1 trips", ["Class", "Time constant, s", "Cold start", "Hot start", "In the duty", "What speaks against it"], "words");
        foreach (OverloadRow row in choice.Rows)
            table.Add(row.Class.Name, Plain(row.Class.Seconds), Plain(row.LevelAfterColdStart), Plain(row.LevelAfterHotStart), OrDash(row.DutyLevel, Plain), row.Objection.Length == 0 ? "nothing" : row.Objection);
        page.Table(table);
        page.Paragraph($"<strong>{(choice.Chosen == null ? "No class fits" : $"Class {choice.Chosen.Name}")}:</strong> {choice.Why}.");
    }
}
