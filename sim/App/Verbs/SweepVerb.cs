using System.CommandLine;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.App.Verbs;

/// <summary>Runs a case over its tolerances, at once or in shards.</summary>
internal static class SweepVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        SweepOptions options = new();
        Option<string?> shard = SweepShard.Option();
        Option<double> allowed = SweepProducts.AllowedOption();
        Command command = CaseVerb.Build(
            terminal,
            "sweep",
            "Run a case over its tolerances: many starts with what may differ, one row for each, and what is the worst of them. Ends with 1 when more of them than allowed pass a limit of the case. Ctrl-C leaves nothing behind, but for a shard, which goes on from there.\n\nExample:\n  starterctl sweep sim/cases/line-shaft.toml --count 1000 --seed 7\n  starterctl sweep sim/cases/bench-rig.toml --method corners --out sweeps --json\n  starterctl sweep sim/cases/bench-rig.toml --method sensitivity\n  starterctl sweep sim/cases/bench-rig.toml --count 100000 --shard 2/4",
            call => Do(call, options, shard, allowed),
            more: [options.Count, options.Seed, options.Method, options.Levels, allowed, shard]);
        command.Subcommands.Add(SweepMergeVerb.Build(terminal));
        return command;
    }

    private static int Do(VerbCall call, SweepOptions options, Option<string?> shard, Option<double> allowed)
    {
        if (call.Parsed.GetValue(shard) is string written)
        {
            if (call.Parsed.GetResult(allowed) is { Implicit: false }) throw new SweepException("--allow", "it with --shard", "--allow with sweep merge, which knows all starts");
            return SweepShard.Do(call, options.Read(call.Parsed), written);
        }

        SweepPlan plan = SweepPlan.Of(CaseFile.Read(call.CasePath), options.Read(call.Parsed));
        SweepProducts products = new(call.Terminal, call.AsJson, new OutputPlace(call.Place, call.CasePath), call.CasePath, call.Parsed.GetValue(allowed));
        return products.Write(call.CasePath, path => call.Terminal.Work("sweep", progress =>
        {
            using SweepWriter writer = new(path, SweepHeader.Of(plan));
            SweepRunner.Run(plan, 0, plan.Count, writer.Add, progress: progress, cancellation: call.Cancellation);
            writer.Complete();
            return plan.Count;
        }));
    }
}
