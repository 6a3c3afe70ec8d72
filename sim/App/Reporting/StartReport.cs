using StarterCtl.App.Reporting.Sections;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting;

/// <summary>The report of a study: one HTML file that needs nothing else, neither a network nor a script.</summary>
public static class StartReport
{
    /// <summary>Writes the report. The same study gives the same bytes.</summary>
    /// <param name="study">The case, designed and run.</param>
    /// <param name="scene">The load step that is played on the running machine.</param>
    /// <param name="ratings">What the parts around the start must bear; null: the case does not ask for it.</param>
    /// <param name="parts">The bought parts of the case; null: none were chosen.</param>
    public static string Html(StartStudy study, LoadStepScene scene, CaseRatings? ratings = null, PartsChoice? parts = null)
    {
        bool hasFinalSpeed = StartCourse.IsPowered(study.Result) && study.Result.FinalRpm > 0;
        DirectStart direct = DirectStart.Of(study, 0.95 * (hasFinalSpeed ? study.Result.FinalRpm : study.Design.Stages[^1].CutoutRpm ?? 0));
        ReportPage page = new();
        page.Line($"<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\"/>");
        page.Line($"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>{study.Title} – starter report</title>");
        page.Line($"<style>\n{new Markup(ReportStyle.Css)}\n</style>\n</head>\n<body>\n<main>");
        SummarySection.Write(page, study, parts != null, ratings != null);
        CautionSection.Write(page, study);
        MachineSection.Write(page, study);
        RegulationSection.Write(page, study);
        StarterSection.Write(page, study);
        if (parts != null) PartsSection.Write(page, parts);
        StartSection.Write(page, study);
        PlaneSection.Write(page, study);
        EnergySection.Write(page, study);
        DirectSection.Write(page, study, direct);
        LoadStepSection.Write(page, study, scene);
        if (ratings != null) RatingsSection.Write(page, ratings);
        RunSection.Write(page, study);
        page.Line($"</main>\n</body>\n</html>");
        return page.ToString();
    }
}
