using System.CommandLine;
using System.Threading;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Verbs;

/// <summary>Simulates a start.</summary>
internal static class RunVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal) => CaseVerb.Build(
        terminal,
        "run",
        "Simulate the start of a case with the board's own control code; judge it and write its record.\n\nExample:\n  starterctl run sim/cases/line-shaft.toml\n  starterctl run sim/cases/bench-rig.toml --json --out records",
        Do);

    private static int Do(VerbCall call)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        StartStudy study = call.Terminal.Work("run", progress => CaseRunner.Run(file, progress, call.Cancellation));
        string json = JsonText.Of(RunJson.Of(study));
        using OutputFiles files = new(call.CasePath);
        AddTo(files, study, json, new OutputPlace(call.Place, call.CasePath), call.Cancellation);
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else RunTable.Show(call.Terminal.Results, study);
        foreach (string warning in study.Warnings) call.Terminal.Warn(warning);
        files.Report(call.Terminal);
        return study.Verdict.Passed ? ExitCode.Ok : ExitCode.Failed;
    }

    /// <summary>Writes the record, the settings that made it and the result beside their places.</summary>
    public static void AddTo(OutputFiles files, StartStudy study, string json, OutputPlace place, CancellationToken cancellation)
    {
        files.Add("the record", place.PathOf("record.csv"), writer => CsvRecord.Write(study.Record, writer, cancellation));
        files.Add("the settings", place.PathOf("settings.txt"), writer => writer.Write(SettingsText.Write(study.Settings)));
        files.Add("the result", place.PathOf("run.json"), writer => writer.WriteLine(json));
    }
}
