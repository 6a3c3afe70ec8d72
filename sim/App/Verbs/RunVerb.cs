using System.CommandLine;
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
        RecordOptions options = new();
        return CaseVerb.Build(
            terminal,
            "run",
            "Simulate the start of a case with the board's own control code; judge it and write its record.\n\nExample:\n  starterctl run sim/cases/line-shaft.toml\n  starterctl run sim/cases/bench-rig.toml --json --out records\n  starterctl run sim/cases/bench-rig.toml --every-period --format parquet,comtrade",
            call => Do(call, options),
            more: [options.Format, options.EveryPeriod]);
    }

    private static int Do(VerbCall call, RecordOptions options)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        OutputPlace place = new(call.Place, call.CasePath);
        using OutputFiles files = new(call.CasePath);
        using RecordOutput record = new(files, place, options.FormatsOf(call.Parsed));
        StartStudy study = call.Terminal.Work("run", progress => CaseRunner.Run(
            file, new RecordOrder(record.Open, call.Parsed.GetValue(options.EveryPeriod)), progress, call.Cancellation));
        string json = JsonText.Of(RunJson.Of(study));
        record.Complete();
        AddTo(files, study, json, place);
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else RunTable.Show(call.Terminal.Results, study);
        foreach (string warning in study.Warnings) call.Terminal.Warn(warning);
        files.Report(call.Terminal);
        return study.Verdict.Passed ? ExitCode.Ok : ExitCode.Failed;
    }

    /// <summary>Writes the settings of a run and its result beside their places.</summary>
    public static void AddTo(OutputFiles files, StartStudy study, string json, OutputPlace place)
    {
        files.Add("the settings", place.PathOf("settings.txt"), writer => writer.Write(SettingsText.Write(study.Settings)));
        files.Add("the result", place.PathOf("run.json"), writer => writer.WriteLine(json));
    }
}
