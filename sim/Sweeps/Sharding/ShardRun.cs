using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>
/// Makes a shard whole. Rows are kept in pieces, files of results that are written beside their places and renamed: whoever is killed loses the piece
/// in hand, and the next run computes only what is missing. In the end the pieces are joined, and go.
/// </summary>
/// <param name="plan">The sweep.</param>
/// <param name="files">The shard's files.</param>
/// <param name="said">Told what was discarded, and why.</param>
/// <param name="pieceRows">Rows of a piece; what a shard comes to does not depend on it.</param>
public sealed class ShardRun(SweepPlan plan, ShardFiles files, Action<string> said, int pieceRows = ShardRun.PieceRows)
{
    /// <summary>Rows that a kill can cost, but for those that are being written.</summary>
    public const int PieceRows = 1024;

    private readonly SweepHeader _header = SweepHeader.Of(plan);
    private readonly ShardSpan _span = SpanOf(plan, files.Shard);
    private long _keptRows;
    private long _computedRows;

    /// <summary>Rows in whole pieces by now: what a run that is ended leaves to the next.</summary>
    public long RowsKept => Interlocked.Read(ref _keptRows) + Interlocked.Read(ref _computedRows);

    /// <summary>Computes what is missing; does nothing where the shard is whole.</summary>
    /// <param name="progress">Told which part is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the work within a start's time; whole pieces stay.</param>
    /// <exception cref="SweepException">Rows of another sweep are in the way.</exception>
    /// <exception cref="ShardBusyException">Another process computes the shard.</exception>
    /// <exception cref="IOException">The disk is full, or a file cannot be written; whole pieces stay.</exception>
    public ShardResult Run(IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        bool wasWhole = IsWhole();
        if (!wasWhole)
        {
            Directory.CreateDirectory(files.PiecesFolder);
            using FileStream held = Lock();
            // Another process may have held it until just now.
            wasWhole = IsWhole();
            if (!wasWhole) MakeWhole(progress, cancellation);
        }

        RemovePieces();
        return new ShardResult(_span, plan.Count, _span.RowCount - _computedRows, _computedRows, wasWhole, files.WholePath);
    }

    private bool IsWhole() => File.Exists(files.WholePath) && Problem(files.WholePath, _span) == null;

    private void MakeWhole(IProgress<double>? progress, CancellationToken cancellation)
    {
        foreach (string path in Directory.EnumerateFiles(files.PiecesFolder).Where(ShardFiles.IsHalf)) Discard(path, $"{path}: half-written by a process that was ended");
        KeepIfAsWanted(files.WholePath, _span);
        List<ShardSpan> missing = [.. Pieces().Where(piece => !KeepIfAsWanted(files.PieceOf(piece.FirstRow), piece))];
        long missingRows = missing.Sum(piece => piece.RowCount);
        _keptRows = _span.RowCount - missingRows;
        foreach (ShardSpan stretch in Stretches(missing))
        {
            Share? share = progress == null ? null : new Share(progress, _computedRows, stretch.RowCount, missingRows);
            SweepRunner.Run(plan, stretch.FirstRow, stretch.RowCount, KeepPiece, progress: share, blockRows: pieceRows, cancellation: cancellation);
        }

        Join(cancellation);
    }

    private void KeepPiece(ReadOnlyMemory<SweepRow> rows)
    {
        ShardSpan piece = _span with { FirstRow = rows.Span[0].Row, RowCount = rows.Length };
        Write(files.PieceOf(piece.FirstRow), piece, [rows]);
        Interlocked.Add(ref _computedRows, rows.Length);
    }

    private void Join(CancellationToken cancellation)
    {
        IEnumerable<SweepRow[]> blocks = Pieces().SelectMany(piece => SweepTable.Open(files.PieceOf(piece.FirstRow)).Blocks());
        Write(files.WholePath, _span, RowBlocks.Of(blocks, SweepRunner.BlockRows), cancellation);
    }

    private void Write(string path, ShardSpan span, IEnumerable<ReadOnlyMemory<SweepRow>> blocks, CancellationToken cancellation = default)
    {
        string beside = files.BesideOf(path);
        using (SweepWriter writer = new(beside, _header, span))
        {
            foreach (ReadOnlyMemory<SweepRow> block in blocks)
            {
                cancellation.ThrowIfCancellationRequested();
                writer.Add(block);
            }

            writer.Complete();
        }

        File.Move(beside, path, true);
    }

    private static ShardSpan SpanOf(SweepPlan plan, Shard shard)
    {
        (long first, long count) = shard.RowsOf(plan.Count);
        return new ShardSpan(shard.Number, shard.Of, first, count, plan.File.FileName);
    }

    private IEnumerable<ShardSpan> Pieces()
    {
        for (long first = _span.FirstRow; first < _span.End; first += pieceRows) yield return _span with { FirstRow = first, RowCount = Math.Min(pieceRows, _span.End - first) };
    }

    // Pieces one behind the other are run in one go: the next is computed while the last is written.
    private static IEnumerable<ShardSpan> Stretches(List<ShardSpan> pieces)
    {
        ShardSpan? stretch = null;
        foreach (ShardSpan piece in pieces)
        {
            if (stretch?.End == piece.FirstRow)
            {
                stretch = stretch with { RowCount = stretch.RowCount + piece.RowCount };
                continue;
            }

            if (stretch != null) yield return stretch;
            stretch = piece;
        }

        if (stretch != null) yield return stretch;
    }

    private bool KeepIfAsWanted(string path, ShardSpan span)
    {
        if (!File.Exists(path)) return false;
        string? problem = Problem(path, span);
        if (problem != null) Discard(path, problem);
        return problem == null;
    }

    // Null: the file holds these rows of this sweep.
    private string? Problem(string path, ShardSpan span)
    {
        SweepTable table;
        try
        {
            table = SweepTable.Open(path);
        }
        catch (SweepException error)
        {
            return error.Message;
        }

        if (table.Header.DifferenceFrom(_header) is string difference) throw new SweepException(path, $"rows of another sweep: {difference}", "another --out, or a folder without this file");
        // The case may have been called by another path.
        bool holds = table.Span is ShardSpan found && found with { CalledCase = span.CalledCase } == span && table.RowCount == span.RowCount;
        return holds ? null : $"{path}: other rows than its name says";
    }

    private void Discard(string path, string why)
    {
        said($"discarded: {why}");
        File.Delete(path);
    }

    private FileStream Lock()
    {
        try
        {
            return new FileStream(files.LockPath, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException error) when (error is not (FileNotFoundException or DirectoryNotFoundException) && File.Exists(files.LockPath))
        {
            throw new ShardBusyException();
        }
    }

    // What is in the way of that is no reason to call a whole shard anything else.
    private void RemovePieces()
    {
        try
        {
            if (Directory.Exists(files.PiecesFolder)) Directory.Delete(files.PiecesFolder, true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }

    private sealed class Share(IProgress<double> whole, long doneRows, long rows, long allRows) : IProgress<double>
    {
        public void Report(double value) => whole.Report((doneRows + value * rows) / allRows);
    }
}
