using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>Where the files of a shard are: its results, and the folder of its pieces until these are whole.</summary>
public sealed partial class ShardFiles
{
    private const string Partial = ".partial.parquet";

    /// <summary>The files of a shard.</summary>
    /// <param name="folder">Folder of all shards of a sweep.</param>
    /// <param name="stem">Name of the case, without its extension.</param>
    /// <param name="shard">The shard.</param>
    public ShardFiles(string folder, string stem, Shard shard)
    {
        Shard = shard;
        WholePath = Path.Combine(folder, $"{stem}.sweep.{shard.ToFileName()}.parquet");
        PiecesFolder = PiecesFolderOf(WholePath);
    }

    /// <summary>The shard.</summary>
    public Shard Shard { get; }

    /// <summary>Its results: "bench-rig.sweep.2-of-4.parquet".</summary>
    public string WholePath { get; }

    /// <summary>Folder of its pieces: "bench-rig.sweep.2-of-4.pieces". Belongs to the shard and goes when the shard is whole.</summary>
    public string PiecesFolder { get; }

    /// <summary>Held by the process that computes the shard.</summary>
    internal string LockPath => Path.Combine(PiecesFolder, "lock");

    /// <summary>The files of shards in a folder, by name.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static IReadOnlyList<string> In(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*.parquet").Where(path => NamePattern().IsMatch(Path.GetFileName(path))).Order(StringComparer.Ordinal)];

    /// <summary>The folder in which a shard's pieces are as long as the shard is not whole.</summary>
    /// <param name="wholePath">Where the shard's results will be.</param>
    internal static string PiecesFolderOf(string wholePath) => Path.ChangeExtension(wholePath, ".pieces");

    /// <summary>A piece.</summary>
    /// <param name="first">Its first row.</param>
    internal string PieceOf(long first) => Path.Combine(PiecesFolder, FormattableString.Invariant($"{first:D10}.parquet"));

    /// <summary>What is written on the way to a file.</summary>
    /// <param name="path">The file.</param>
    internal string BesideOf(string path) => Path.Combine(PiecesFolder, Path.GetFileNameWithoutExtension(path) + Partial);

    /// <summary>Whether a process was ended while it wrote a file.</summary>
    internal static bool IsHalf(string path) => path.EndsWith(Partial, StringComparison.Ordinal);

    [GeneratedRegex(@"\.sweep\.\d+-of-\d+\.parquet$", RegexOptions.CultureInvariant)]
    private static partial Regex NamePattern();
}
