using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sharding;

namespace StarterCtl.App.Verbs;

/// <summary>One shard of a sweep. It ends with 0 when its rows are there: what they come to is known once all are merged.</summary>
internal static class SweepShard
{
    /// <summary>Which shard.</summary>
    public static Option<string?> Option() => new("--shard")
    {
        Description = "Run one of N parts, I/N with I from 1 to N, into a file of its own; whole parts go to sweep merge. auto: by the index of a Slurm array; auto/N: by the index, from 0, of a Slurm array or an indexed Job of Kubernetes. Started again, a part goes on where it was ended.",
        HelpName = "I/N",
    };

    /// <summary>Makes the shard whole.</summary>
    /// <param name="call">The call.</param>
    /// <param name="order">Which starts.</param>
    /// <param name="written">Value of the option.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Do(VerbCall call, SweepOrder order, string written)
    {
        Shard shard = ShardAddress.Of(written, Environment.GetEnvironmentVariable);
        SweepPlan plan = SweepPlan.Of(CaseFile.Read(call.CasePath), order);
        ShardFiles files = FilesOf(call, shard);
        ShardRun run = new(plan, files, call.Terminal.Warn);
        ShardResult result = Run(call, run, files);
        ShardJson shape = ShardJson.From(result);
        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(shape));
        else ShardTable.Show(call.Terminal.Results, Path.GetFileName(call.CasePath), shape);
        if (result.WasWhole) call.Terminal.Notes.MarkupLineInterpolated($"nothing to do, the shard is whole: {files.WholePath}");
        else call.Terminal.Wrote("the shard", files.WholePath);
        return ExitCode.Ok;
    }

    private static ShardFiles FilesOf(VerbCall call, Shard shard)
    {
        string stem = Path.GetFileNameWithoutExtension(call.CasePath);
        string rows = new OutputPlace(call.Place, call.CasePath).PathOf("sweep.parquet");
        if (Path.GetFileName(rows) != $"{stem}.sweep.parquet") throw new OutputException(rows, "a shard's file has a name of its own", false);
        return new ShardFiles(Path.GetDirectoryName(rows)!, stem, shard);
    }

    private static ShardResult Run(VerbCall call, ShardRun run, ShardFiles files)
    {
        try
        {
            return call.Terminal.Work("sweep", progress => run.Run(progress, call.Cancellation));
        }
        catch (OperationCanceledException)
        {
            SayWhatIsKept(call, run);
            throw;
        }
        catch (ShardBusyException error)
        {
            throw new OutputException(files.WholePath, error.Message, true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            SayWhatIsKept(call, run);
            throw OutputException.Of(files.WholePath, error);
        }
    }

    private static void SayWhatIsKept(VerbCall call, ShardRun run)
    {
        if (run.RowsKept > 0) call.Terminal.Warn($"{run.RowsKept.ToString(CultureInfo.InvariantCulture)} rows are kept; the same command goes on from there");
    }
}
