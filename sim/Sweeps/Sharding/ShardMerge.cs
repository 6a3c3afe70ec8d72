using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>Shards of one sweep which together hold each of its rows once; put together they are the bytes of one run.</summary>
public sealed class ShardMerge
{
    // A sweep without most of its shards needs no line for each of them.
    private const int MostLines = 20;

    private readonly List<Part> _parts;

    private ShardMerge(List<Part> parts)
    {
        _parts = parts;
    }

    /// <summary>The sweep.</summary>
    public SweepHeader Header => _parts[0].Table.Header;

    /// <summary>The case as it was called for the first shard.</summary>
    public string CalledCase => _parts[0].Span.CalledCase;

    /// <summary>Opens shards.</summary>
    /// <param name="paths">Their files, in any order; the sweep may have been cut in several ways.</param>
    /// <exception cref="SweepException">A file is damaged or of another sweep, rows are missing or there twice: with a line for each.</exception>
    public static ShardMerge Open(IReadOnlyList<string> paths)
    {
        List<SweepException> problems = [];
        List<Part> parts = [];
        foreach (string path in paths)
        {
            try
            {
                parts.Add(Part.Open(path));
            }
            catch (SweepException error)
            {
                problems.Add(error);
            }
        }

        Refuse(problems);
        Refuse([.. parts.Skip(1).Select(part => part.StrangerTo(parts[0])).OfType<SweepException>()]);
        parts.Sort((a, b) => (a.Span.FirstRow, a.Span.End, a.Span.Shard).CompareTo((b.Span.FirstRow, b.Span.End, b.Span.Shard)));
        Refuse([.. Doubles(parts), .. Gaps(parts)]);
        return new ShardMerge(parts);
    }

    /// <summary>Writes the sweep's whole results.</summary>
    /// <param name="path">The file; whoever wants nothing half-written writes beside its place and renames it.</param>
    /// <param name="progress">Told which part is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <exception cref="SweepException">A file cannot be read any more, or does not hold the rows that it says.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(string path, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        using SweepWriter writer = new(path, Header);
        long done = 0;
        foreach (ReadOnlyMemory<SweepRow> block in RowBlocks.Of(_parts.SelectMany(part => part.Blocks()), SweepRunner.BlockRows))
        {
            cancellation.ThrowIfCancellationRequested();
            writer.Add(block);
            done += block.Length;
            progress?.Report((double)done / Header.Count);
        }

        writer.Complete();
    }

    private static void Refuse(List<SweepException> problems)
    {
        if (problems.Count > MostLines) problems = [.. problems.Take(MostLines), new SweepException("and behind these", $"{Number(problems.Count - MostLines)} more of this kind", "none")];
        if (problems.Count > 0) throw new SweepException(problems);
    }

    private static IEnumerable<SweepException> Doubles(List<Part> parts)
    {
        Part? furthest = null;
        foreach (Part part in parts.Where(part => part.Span.RowCount > 0))
        {
            if (furthest != null && part.Span.FirstRow < furthest.Span.End)
            {
                long end = Math.Min(part.Span.End, furthest.Span.End);
                yield return new SweepException(part.Path, $"{Rows(part.Span.FirstRow, end)}, which {furthest.Path} has too", "every row once");
            }

            if (furthest == null || part.Span.End > furthest.Span.End) furthest = part;
        }
    }

    private static IEnumerable<SweepException> Gaps(List<Part> parts)
    {
        long count = parts[0].Table.Header.Count, next = 0;
        foreach (Part part in parts)
        {
            foreach (SweepException missing in Missing(parts, next, part.Span.FirstRow)) yield return missing;
            next = Math.Max(next, part.Span.End);
        }

        foreach (SweepException missing in Missing(parts, next, count)) yield return missing;
    }

    // By shards where all are cut in the same way, as rows otherwise.
    private static IEnumerable<SweepException> Missing(List<Part> parts, long first, long end)
    {
        if (first >= end) yield break;
        ShardSpan span = parts[0].Span;
        string folder = Path.GetDirectoryName(parts[0].Path) is string name and not "" ? name : ".";
        if (parts.Exists(part => part.Span.Of != span.Of))
        {
            yield return new SweepException(folder, $"no {Rows(first, end)}", "every row once");
            yield break;
        }

        for (int number = 1; number <= span.Of; number++)
        {
            Shard shard = new(number, span.Of);
            (long begin, long rows) = shard.RowsOf(parts[0].Table.Header.Count);
            if (rows == 0 || begin < first || begin + rows > end) continue;
            ShardFiles files = new(folder, Path.GetFileNameWithoutExtension(parts[0].Table.Header.Case), shard);
            string begun = Directory.Exists(files.PiecesFolder) ? "; it was begun, and goes on where its command is given again" : "";
            yield return new SweepException(folder, $"no shard {shard} with {Rows(begin, begin + rows)}{begun}", "every row once");
        }
    }

    private static string Rows(long first, long end) => end - first == 1 ? $"row {Number(first)}" : $"rows {Number(first)} to {Number(end - 1)}";

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    // A shard's file.
    private sealed record Part(string Path, SweepTable Table, ShardSpan Span)
    {
        public static Part Open(string path)
        {
            SweepTable table = SweepTable.Open(path);
            ShardSpan span = table.Span ?? throw new SweepException(path, "the whole results of a sweep", "files of its shards");
            bool isShard = span.Of is >= 1 and <= Shard.MostShards && span.Shard >= 1 && span.Shard <= span.Of
                && new Shard(span.Shard, span.Of).RowsOf(table.Header.Count) == (span.FirstRow, span.RowCount) && table.RowCount == span.RowCount;
            return isShard ? new Part(path, table, span) : throw new SweepException(path, "a part of a shard", "the whole results of a shard");
        }

        public SweepException? StrangerTo(Part first) =>
            Table.Header.DifferenceFrom(first.Table.Header) is string difference ? new SweepException(Path, $"rows of another sweep than in {first.Path}: {difference}", "shards of one sweep") : null;

        public IEnumerable<SweepRow[]> Blocks()
        {
            long next = Span.FirstRow;
            foreach (SweepRow[] block in Table.Blocks())
            {
                foreach (SweepRow row in block)
                {
                    if (row.Row != next++) throw new SweepException(Path, $"row {Number(row.Row)} behind row {Number(next - 2)}", "rows in their order");
                }

                yield return block;
            }
        }
    }
}
