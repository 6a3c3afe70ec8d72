using System.IO;
using System.Threading;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Verbs;

/// <summary>What happens without a verb: the shipped 220 V case designed, run and reported.</summary>
internal static class DemoVerb
{
    private const string CaseName = "line-shaft.toml";

    /// <summary>Runs the demo.</summary>
    public static int Do(Terminal terminal, bool asJson, string? place, CancellationToken cancellation)
    {
        string text = ShippedCases.Text(CaseName);
        CaseFile file = CaseFile.Parse(CaseName, text);
        CaseDesign designed = CaseDesign.Of(file);
        OutputPlace output = new(place ?? Path.Combine(OutputPlace.DefaultFolder, "demo"), CaseName);
        string casePath = Path.Combine(Path.GetDirectoryName(output.PathOf("report.html")) ?? "", CaseName);

        // A case that a user has changed is theirs: it is never written over.
        bool isThere = File.Exists(casePath);
        using OutputFiles files = new(null);
        if (!isThere) files.Add("the case", casePath, writer => writer.Write(text));
        using RecordOutput record = new(files, output, [RecordFormat.Csv]);
        StartStudy study = terminal.Work("demo", progress => CaseRunner.Run(file, new RecordOrder(record.Open, false), progress, cancellation));
        string json = JsonText.Of(RunJson.Of(study));
        record.Complete();
        RunVerb.AddTo(files, study, json, output);
        ReportVerb.AddTo(files, study, CaseRatings.Of(designed, cancellation), output, cancellation);
        files.Commit();

        if (asJson) terminal.Data.WriteLine(json);
        else Show(terminal.Results, designed, study);
        files.Report(terminal);
        if (isThere && File.ReadAllText(casePath) != text) terminal.Notes.MarkupLineInterpolated($"kept: {casePath}, which you have changed; the demo shows the shipped case");
        terminal.Notes.MarkupLineInterpolated($"Next: open the report; change a number in {casePath}; then starterctl run {casePath}");
        return study.Verdict.Passed ? ExitCode.Ok : ExitCode.Failed;
    }

    private static void Show(IAnsiConsole console, CaseDesign designed, StartStudy study)
    {
        DesignTable.Show(console, designed);
        console.WriteLine();
        RunTable.Show(console, study);
        console.WriteLine();
    }
}
