using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Summary;

namespace StarterCtl.App.Verbs;

/// <summary>Runs a case over its tolerances.</summary>
internal static class SweepVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        SweepOptions options = new();
        Option<double> allowed = AllowedOption();
        return CaseVerb.Build(
            terminal,
            "sweep",
            "Run a case over its tolerances: many starts with what may differ, one row for each, and what is the worst of them. Ends with 1 when more of them than allowed pass a limit of the case. Ctrl-C leaves nothing behind.\n\nExample:\n  starterctl sweep sim/cases/line-shaft.toml --count 1000 --seed 7\n  starterctl sweep sim/cases/bench-rig.toml --method corners --out sweeps --json\n  starterctl sweep sim/cases/bench-rig.toml --method sensitivity",
            call => Do(call, options, call.Parsed.GetValue(allowed)),
            more: [options.Count, options.Seed, options.Method, options.Levels, allowed]);
    }

    private static int Do(VerbCall call, SweepOptions options, double allowedShare)
    {
        SweepOrder order = options.Read(call.Parsed);
        SweepPlan plan = SweepPlan.Of(CaseFile.Read(call.CasePath), order);
        OutputPlace place = new(call.Place, call.CasePath);
        using OutputFiles files = new(call.CasePath);
        SweepSummary summary = Run(call, plan, files, place.PathOf("sweep.parquet"));
        SweepJson shape = SweepJson.Of(summary, row => $"starterctl run {call.CasePath} --row {row.ToString(CultureInfo.InvariantCulture)}{SweepOptions.Written(order)}");
        string json = JsonText.Of(shape);
        files.Add("the summary", place.PathOf("sweep.json"), writer => writer.WriteLine(json));
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else Tables.SweepTable.Show(call.Terminal.Results, shape);
        files.Report(call.Terminal);
        return summary.Failed.Share <= allowedShare ? ExitCode.Ok : ExitCode.Failed;
    }

    private static SweepSummary Run(VerbCall call, SweepPlan plan, OutputFiles files, string path)
    {
        string beside = files.Reserve("the rows", path);
        try
        {
            call.Terminal.Work("sweep", progress =>
            {
                using SweepWriter writer = new(beside, SweepHeader.Of(plan));
                SweepRunner.Run(plan, 0, plan.Count, writer.Add, progress: progress, cancellation: call.Cancellation);
                writer.Complete();
                return plan.Count;
            });
            return SweepSummary.Of(SweepTable.Open(beside));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw OutputException.Of(path, error);
        }
    }

    private static Option<double> AllowedOption()
    {
        Option<double> option = new("--allow")
        {
            Description = "Share of starts that may pass a limit, 0 to 1. Without it: none.",
            HelpName = "SHARE",
        };
        option.CustomParser = result =>
        {
            string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
            if (double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double share) && share is >= 0 and <= 1) return share;
            result.AddError($"--allow: found \"{written}\"; allowed: a number from 0 to 1");
            return 0;
        };
        return option;
    }
}
