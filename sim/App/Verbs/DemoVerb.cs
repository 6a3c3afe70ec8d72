using System.IO;
using System.Threading;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
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
        StartStudy study = terminal.Work("demo", progress => CaseRunner.Run(file, progress, cancellation));
        string json = JsonText.Of(RunJson.Of(study));
        if (asJson)
        {
            terminal.Data.WriteLine(json);
        }
        else
        {
            DesignTable.Show(terminal.Results, designed);
            terminal.Results.WriteLine();
            RunTable.Show(terminal.Results, study);
            terminal.Results.WriteLine();
        }

        OutputPlace output = new(place, CaseName);
        string casePath = KeepCase(terminal, Path.Combine(Path.GetDirectoryName(output.PathOf("report.html")) ?? "", CaseName), text);
        RunVerb.WriteFiles(terminal, study, json, output);
        ReportVerb.WriteFile(terminal, study, output);
        terminal.Notes.MarkupLineInterpolated($"Next: open the report; change a number in {casePath}; then starterctl run {casePath}");
        return study.Verdict.Passed ? ExitCode.Ok : ExitCode.Failed;
    }

    // A case that a user has changed is theirs: it is never written over.
    private static string KeepCase(Terminal terminal, string path, string text)
    {
        if (File.Exists(path)) return path;
        AtomicFile.Write(path, writer => writer.Write(text));
        terminal.Wrote("the case", path);
        return path;
    }
}
