using System.CommandLine;
using System.Threading;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Reporting;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Verbs;

/// <summary>Writes the report of a start.</summary>
internal static class ReportVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        PartsOptions parts = new();
        Command command = CaseVerb.Build(
            terminal,
            "report",
            "Write one self-contained HTML file that explains the starter of a case and its start; with bought parts, their burdens and their bill, if asked.\n\nExample:\n  starterctl report sim/cases/line-shaft.toml\n  starterctl report sim/cases/bench-rig.toml --out bench-rig.html\n  starterctl report sim/cases/line-shaft.toml --stock sim/cases/stock.csv --parts-per-section 2",
            call => Do(call, parts),
            more: parts.All);
        command.Validators.Add(parts.Check);
        return command;
    }

    private static int Do(VerbCall call, PartsOptions parts)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        PartsChoice? choice = parts.Choose(call, file);
        file = choice?.File ?? file;
        StartStudy study = call.Terminal.Work("report", progress => CaseRunner.Run(file, progress, call.Cancellation));
        CaseRatings? ratings = CaseRatings.Of(CaseDesign.Of(file), call.Cancellation);
        using OutputFiles files = new(call.CasePath);
        string report = AddTo(files, study, ratings, new OutputPlace(call.Place, call.CasePath), call.Cancellation, choice);
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(new ReportJson(study.Verdict.Word, report, study.CaseSha256)));
        foreach (string warning in study.Warnings) call.Terminal.Warn(warning);
        foreach (string excess in ratings?.Excesses ?? []) call.Terminal.Warn(excess);
        if (choice != null) PartsOptions.Caution(call.Terminal, choice);
        files.Report(call.Terminal);
        return study.Verdict.Passed && ratings is not { Excesses.Count: > 0 } ? ExitCode.Ok : ExitCode.Failed;
    }

    /// <summary>Writes the report beside its place and gives the place.</summary>
    public static string AddTo(OutputFiles files, StartStudy study, CaseRatings? ratings, OutputPlace place, CancellationToken cancellation, PartsChoice? parts = null)
    {
        string html = StartReport.Html(study, LoadStepScene.Of(study), ratings, parts);
        cancellation.ThrowIfCancellationRequested();
        string path = place.PathOf("report.html");
        files.Add("the report", path, writer => writer.Write(html));
        return path;
    }
}
