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
    public static Command Build(Terminal terminal)
    {
        VerbOptions options = new();
        Command command = new("run", "Simulate the start of a case with the board's own control code; judge it and write its record.\n\nExample:\n  starterctl run sim/cases/line-shaft.toml\n  starterctl run sim/cases/bench-rig.toml --json --out records")
        {
            options.Case, options.Json, options.Out,
        };
        command.SetAction((parsed, cancellation) => Verb.Run(() =>
            Do(terminal, parsed.GetRequiredValue(options.Case), parsed.GetValue(options.Json), parsed.GetValue(options.Out), cancellation)));
        return command;
    }

    private static int Do(Terminal terminal, string path, bool asJson, string? place, CancellationToken cancellation)
    {
        CaseFile file = CaseFile.Read(path);
        StartStudy study = terminal.Work("run", progress => CaseRunner.Run(file, progress, cancellation));
        string json = JsonText.Of(RunJson.Of(study));
        using OutputFiles files = new();
        AddTo(files, study, json, new OutputPlace(place, path), cancellation);
        files.Commit();

        if (asJson) terminal.Data.WriteLine(json);
        else RunTable.Show(terminal.Results, study);
        foreach (string warning in study.Warnings) terminal.Warn(warning);
        files.Report(terminal);
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
