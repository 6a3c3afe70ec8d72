using System.CommandLine;
using System.Threading;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Reporting;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Verbs;

/// <summary>Writes the report of a start.</summary>
internal static class ReportVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal) => CaseVerb.Build(
        terminal,
        "report",
        "Write one self-contained HTML file that explains the starter of a case and its start.\n\nExample:\n  starterctl report sim/cases/line-shaft.toml\n  starterctl report sim/cases/bench-rig.toml --out bench-rig.html",
        Do);

    private static int Do(VerbCall call)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        StartStudy study = call.Terminal.Work("report", progress => CaseRunner.Run(file, progress, call.Cancellation));
        CaseRatings? ratings = CaseRatings.Of(CaseDesign.Of(file), call.Cancellation);
        using OutputFiles files = new(call.CasePath);
        string report = AddTo(files, study, ratings, new OutputPlace(call.Place, call.CasePath), call.Cancellation);
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(new ReportJson(study.Verdict.Word, report, study.CaseSha256)));
        foreach (string warning in study.Warnings) call.Terminal.Warn(warning);
        foreach (string excess in ratings?.Excesses ?? []) call.Terminal.Warn(excess);
        files.Report(call.Terminal);
        return study.Verdict.Passed && ratings is not { Excesses.Count: > 0 } ? ExitCode.Ok : ExitCode.Failed;
    }

    /// <summary>Writes the report beside its place and gives the place.</summary>
    public static string AddTo(OutputFiles files, StartStudy study, CaseRatings? ratings, OutputPlace place, CancellationToken cancellation)
    {
        string html = StartReport.Html(study, LoadStepScene.Of(study), ratings);
        cancellation.ThrowIfCancellationRequested();
        string path = place.PathOf("report.html");
        files.Add("the report", path, writer => writer.Write(html));
        return path;
    }
}
