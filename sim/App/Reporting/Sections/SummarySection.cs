using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>Title, verdict, key figures and contents.</summary>
internal static class SummarySection
{
    /// <summary>The section of bought parts, which not every report has.</summary>
    public const string PartsId = "parts";

    /// <summary>The section of what the parts must bear, which not every report has.</summary>
    public const string RatingsId = "ratings";

    private const int ShortHash = 12;

    private static readonly (string Id, string Title)[] Contents =
    [
        ("cautions", "Read this first"),
        ("machine", "The machine"),
        ("regulation", "How it holds its speed"),
        ("starter", "The starter"),
        (PartsId, "Bought parts"),
        ("start", "The start"),
        ("plane", "Torque against speed"),
        ("energy", "Where the energy went"),
        ("direct", "Without a starter"),
        ("loadstep", "When the load changes"),
        (RatingsId, "What the parts must bear"),
        ("run", "What ran"),
    ];

    public static void Write(ReportPage page, StartStudy study, bool hasParts, bool hasRatings)
    {
        string hash = study.CaseSha256.Length > ShortHash ? study.CaseSha256[..ShortHash] : study.CaseSha256;
        page.Line($"<header>\n<h1>{study.Title}</h1>\n<p class=\"what\">Design and simulated start of a resistance starter. Case <code>{study.CaseName}</code>, SHA-256 <code>{hash}</code>.</p>\n</header>");
        WriteVerdict(page, study);
        WriteFaults(page, study.Result);
        WriteWarnings(page, study);
        WriteKeyFigures(page, study);
        page.Line($"<nav aria-label=\"Contents\">\n<ol>");
        foreach ((string id, string title) in Contents.Where(section => (hasParts || section.Id != PartsId) && (hasRatings || section.Id != RatingsId))) page.Line($"<li><a href=\"#{id}\">{title}</a></li>");
        page.Line($"</ol>\n</nav>");
    }

    private static void WriteVerdict(ReportPage page, StartStudy study)
    {
        Verdict verdict = study.Verdict;
        page.Line($"<section class=\"verdict {verdict.Word}\" aria-label=\"Verdict\">");
        page.Line($"<p class=\"word\">{(verdict.Passed ? PassWords(study) : "FAIL: " + verdict.Checks.Count(check => !check.Passed) + " of " + verdict.Checks.Count + " limits broken")}</p>");
        ReportTable table = new("Limits of the case", ["Limit", "Result", "Seen", "Allowed"], "words wrap");
        foreach (LimitCheck check in verdict.Checks) table.Add(check.Name, check.Passed ? "✓ holds" : "✗ broken", check.Seen, check.Limit);
        page.Table(table);
        page.Line($"</section>");
    }

    private static string PassWords(StartStudy study) =>
        study.Result.Faults.Count == 0 ? "PASS: every limit holds" : "PASS: it tripped as the case expects";

    private static void WriteFaults(ReportPage page, RunResult result)
    {
        foreach (FaultEntry fault in result.Faults)
        {
            FaultRow text = FaultTable.RowOf(fault.Id);
            string measured = FaultText.Measured(fault);
            page.Line($"<section class=\"verdict fail\" aria-label=\"Fault\">\n<p class=\"word\">Trip at {Seconds(fault.Seconds)}: {text.Name}{(measured == "" ? "" : " (" + measured + ")")}</p>");
            if (text.Severity == FaultSeverity.MayBeLive) page.Line($"<p><strong>The motor may still be live.</strong></p>");
            page.Line($"<p>{text.Cause} {text.Done}</p>\n<p><strong>Check:</strong> {text.Check}</p>\n</section>");
        }
    }

    private static void WriteWarnings(ReportPage page, StartStudy study)
    {
        if (study.Warnings.Count == 0) return;
        page.Line($"<section class=\"warning\" aria-label=\"Warnings\">\n<p><strong>Warnings</strong></p>");
        page.List(study.Warnings.Select(warning => (System.FormattableString)$"{warning}"));
        page.Line($"</section>");
    }

    private static void WriteKeyFigures(ReportPage page, StartStudy study)
    {
        RunResult result = study.Result;
        page.Line($"<dl class=\"keys\">");
        Key(page, "Stages", Plain(study.Design.StageCount));
        Key(page, "Peak current", Amps(result.PeakAmps));
        Key(page, "Peak without a starter", Amps(study.Design.DirectStartAmps));
        Key(page, "Peak torque", Torque(result.PeakTorqueNewtonMetres));
        Key(page, "From the beginning to 95 % of final speed", OrDash(StartCourse.SecondsToSpeed(result), Seconds));
        Key(page, "Final speed", Rpm(result.FinalRpm));
        Key(page, "Final current", Amps(result.FinalAmps));
        Key(page, "Heat in the starter", Joules(result.SectionJoules.Sum()));
        page.Line($"</dl>");
    }

    private static void Key(ReportPage page, string name, string figure) => page.Line($"<div><dt>{name}</dt><dd>{figure}</dd></div>");
}
