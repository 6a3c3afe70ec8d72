using System;
using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sharding;

namespace StarterCtl.App.Verbs;

/// <summary>Puts the shards of a sweep together.</summary>
internal static class SweepMergeVerb
{
    private const string Wanted = "files of shards, CASE.sweep.I-of-N.parquet, or a folder of them";

    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        VerbOptions options = new();
        Option<double> allowed = SweepProducts.AllowedOption();
        Argument<string[]> places = new("SHARDS")
        {
            Description = "Files of shards, or folders of them.",
            Arity = ArgumentArity.OneOrMore,
        };
        Command command = new("merge", "Put the shards of a sweep together: rows and summary are those of one run, byte for byte. Refuses shards of several sweeps, missing rows and rows that are there twice. Ends with 1 when more starts than allowed pass a limit of the case.\n\nExample:\n  starterctl sweep merge out\n  starterctl sweep merge out/bench-rig.sweep.*-of-4.parquet --out whole")
        {
            places, options.Json, options.Out, allowed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() => Do(
            terminal, parsed.GetRequiredValue(places), parsed.GetValue(options.Json), parsed.GetValue(options.Out), parsed.GetValue(allowed), cancellation)));
        return command;
    }

    private static int Do(Terminal terminal, string[] places, bool asJson, string? place, double allowedShare, CancellationToken cancellation)
    {
        string[] paths = [.. places.SelectMany(FilesOf).DistinctBy(Path.GetFullPath)];
        ShardMerge merge = terminal.Work("check", _ => ShardMerge.Open(paths));
        OutputPlace output = new(place, merge.Header.Case);
        string rows = output.PathOf("sweep.parquet");
        if (paths.Any(path => Path.GetFullPath(path) == Path.GetFullPath(rows))) throw new OutputException(rows, "it is what is read", false);
        SweepProducts products = new(terminal, asJson, output, merge.CalledCase, allowedShare);
        return products.Write(null, path => terminal.Work("merge", progress =>
        {
            merge.Write(path, progress, cancellation);
            return paths.Length;
        }));
    }

    private static IReadOnlyList<string> FilesOf(string place)
    {
        if (!Directory.Exists(place)) return [place];
        try
        {
            return ShardFiles.In(place) is { Count: > 0 } files ? files : throw new SweepException(place, "a folder without shards", Wanted);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new SweepException(place, $"a folder that cannot be read ({error.Message})", Wanted);
        }
    }
}
