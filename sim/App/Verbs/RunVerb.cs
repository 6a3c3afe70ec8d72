using System.CommandLine;
using System.Globalization;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.App.Verbs;

/// <summary>Simulates a start.</summary>
internal static class RunVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        RecordOptions options = new();
        SweepOptions sweep = new();
        return CaseVerb.Build(
            terminal,
            "run",
            "Simulate the start of a case with the board's own control code; judge it and write its record.\n\nExample:\n  starterctl run sim/cases/line-shaft.toml\n  starterctl run sim/cases/bench-rig.toml --json --out records\n  starterctl run sim/cases/bench-rig.toml --every-period --format parquet,comtrade\n  starterctl run sim/cases/line-shaft.toml --row 12 --count 1000 --seed 7",
            call => Do(call, options, sweep),
            more: [options.Format, options.EveryPeriod, sweep.Row, sweep.Count, sweep.Seed, sweep.Method, sweep.Levels]);
    }

    private static int Do(VerbCall call, RecordOptions options, SweepOptions sweep)
    {
        PreparedRun prepared = Prepare(CaseFile.Read(call.CasePath), call.Parsed, sweep);
        OutputPlace place = new(call.Place, call.CasePath);
        using OutputFiles files = new(call.CasePath);
        using RecordOutput record = new(files, place, options.FormatsOf(call.Parsed));
        StartStudy study = call.Terminal.Work("run", progress => CaseRunner.Run(
            prepared, new RecordOrder(record.Open, call.Parsed.GetValue(options.EveryPeriod)), progress, call.Cancellation));
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

    // Options of a sweep without a row would be passed over without a word.
    private static PreparedRun Prepare(CaseFile file, ParseResult parsed, SweepOptions sweep)
    {
        if (parsed.GetValue(sweep.Row) is not long row)
        {
            return sweep.OfWhich(parsed) is string without
                ? throw new CaseException([new CaseProblem(file.FileName, 0, "", $"{without} without --row", "--row with it, or no such option")])
                : CaseRunner.Prepare(file);
        }

        SweepPlan plan = SweepPlan.Of(file, sweep.Read(parsed));
        return row < plan.Count
            ? plan.RowOf(row)
            : throw new CaseException([new CaseProblem(file.FileName, 0, "", $"row {row.ToString(CultureInfo.InvariantCulture)}", $"a row of the sweep, 0 to {(plan.Count - 1).ToString(CultureInfo.InvariantCulture)}")]);
    }

    /// <summary>Writes the settings of a run and its result beside their places.</summary>
    public static void AddTo(OutputFiles files, StartStudy study, string json, OutputPlace place)
    {
        files.Add("the settings", place.PathOf("settings.txt"), writer => writer.Write(SettingsText.Write(study.Settings)));
        files.Add("the result", place.PathOf("run.json"), writer => writer.WriteLine(json));
    }
}
