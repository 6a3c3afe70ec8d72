using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace StarterCtl.Engine.Records;

/// <summary>Reads a record back, row by row, up to where it can be read.</summary>
/// <param name="header">The record's header.</param>
public abstract class RecordReader(RecordHeader header) : IDisposable
{
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

    /// <summary>The rows in their order; once.</summary>
    public abstract IEnumerable<Sample> Samples();

    /// <inheritdoc/>
    public void Dispose()
    {
        Free();
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes the files.</summary>
    protected abstract void Free();

    /// <summary>Signals that every record has: only those of a simulation's own may be missing.</summary>
    protected static void CheckColumns(string path, IReadOnlyCollection<string> found)
    {
        string[] missing = [.. SignalTable.All.Where(signal => signal.Role != SignalRole.Plant).Select(signal => signal.Name).Except(found)];
        if (missing.Length > 0) throw new RecordException(path, $"no column {string.Join(", ", missing)}", "a record that has every signal of the table but those of a simulation only");
    }
}
