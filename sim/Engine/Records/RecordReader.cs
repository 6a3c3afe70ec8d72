using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace StarterCtl.Engine.Records;

/// <summary>Reads a record back, row by row, up to where it can be read.</summary>
/// <param name="header">The record's header.</param>
public abstract class RecordReader(RecordHeader header) : IDisposable
{
    /// <summary>Rows after which whoever reads looks up: for progress, for a cancellation.</summary>
    public const int RowsBetweenLooks = 4096;

    /// <summary>The record's header.</summary>
    public RecordHeader Header { get; } = header;

    /// <summary>Where reading stopped; null as long as every row was good.</summary>
    public RecordBreak? Break { get; protected set; }

    /// <summary>Opens a record of CSV or Parquet; of Parquet also the folder of one that was never finished.</summary>
    /// <param name="path">The file or folder.</param>
    /// <exception cref="RecordException">It is not there, or not a record.</exception>
    public static RecordReader Open(string path)
    {
        string extension = Path.GetExtension(path).ToUpperInvariant();
        if (!File.Exists(path) && !Directory.Exists(path)) throw new RecordException(path, "no such file", "a record that exists");
        try
        {
            return extension switch
            {
                ".CSV" when File.Exists(path) => CsvRecordReader.Open(path),
                ".PARQUET" when File.Exists(path) => ParquetRecordReader.Open(path, [path]),
                _ when Directory.Exists(path) => ParquetRecordReader.Open(path, [.. Directory.EnumerateFiles(path, "*.parquet").Order(StringComparer.Ordinal)]),
                _ => throw new RecordException(path, extension.Length == 0 ? "a name without extension" : $"a file of the kind {Path.GetExtension(path)}", "a record, .csv or .parquet: of the formats only these bring every number back bit for bit"),
            };
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new RecordException(path, $"a file that cannot be read ({error.Message})", "a readable file");
        }
    }

    /// <summary>Which part of the record has been read, 0 to 1.</summary>
    public abstract double Part { get; }

    /// <summary>Reads a CSV record out of a stream, such as one in an archive.</summary>
    /// <param name="place">What to call it in messages.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="stream">The CSV; closed with the reader, or at once when this fails.</param>
    /// <param name="totalBytes">Its length, for <see cref="Part"/>.</param>
    /// <exception cref="RecordException">It is not a record.</exception>
    public static RecordReader OfCsv(string place, RecordHeader header, Stream stream, long totalBytes) => CsvRecordReader.Open(place, header, stream, totalBytes);

    /// <summary>The rows in their order; once.</summary>
    /// <param name="progress">Told now and then which part has been read; null: nobody.</param>
    public IEnumerable<Sample> Samples(IProgress<double>? progress = null) => progress == null ? Rows() : Rows(progress);

    /// <inheritdoc/>
    public void Dispose()
    {
        Free();
        GC.SuppressFinalize(this);
    }

    /// <summary>The rows in their order.</summary>
    protected abstract IEnumerable<Sample> Rows();

    /// <summary>Closes the files.</summary>
    protected abstract void Free();

    /// <summary>Signals that every record has: only those of a simulation's own may be missing.</summary>
    protected static void CheckColumns(string path, IReadOnlyCollection<string> found)
    {
        string[] missing = [.. SignalTable.All.Where(signal => signal.Role != SignalRole.Plant).Select(signal => signal.Name).Except(found)];
        if (missing.Length > 0) throw new RecordException(path, $"no column {string.Join(", ", missing)}", "a record that has every signal of the table but those of a simulation only");
    }

    private IEnumerable<Sample> Rows(IProgress<double> progress)
    {
        long rows = 0;
        foreach (Sample sample in Rows())
        {
            if (rows++ % RowsBetweenLooks == 0) progress.Report(Part);
            yield return sample;
        }
    }
}
