using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Parquet;
using Parquet.Schema;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Results;

/// <summary>Writes results as Parquet, a row group for each block of rows, in their order. The same rows in the same blocks give the same bytes.</summary>
public sealed class SweepWriter : IDisposable
{
    private readonly FileStream _stream;
    private readonly SweepColumn[] _columns;
    private readonly DataField[] _fields;
    private readonly ParquetWriter _writer;
    private bool _isComplete;

    /// <summary>Begins a file.</summary>
    /// <param name="path">The file; whoever wants nothing half-written writes beside its place and renames it.</param>
    /// <param name="header">What it holds.</param>
    /// <param name="span">Which rows of the sweep, for a file of a shard; null: all.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public SweepWriter(string path, SweepHeader header, ShardSpan? span = null)
    {
        _columns = SweepColumns.Of(header);
        _fields = Array.ConvertAll(_columns, SweepColumns.FieldOf);
        _stream = new FileStream(path, FileMode.Create, FileAccess.ReadWrite, FileShare.None);
        _writer = ParquetWriter.CreateAsync(new ParquetSchema(_fields.ToArray<Field>()), _stream, new ParquetOptions { CompressionMethod = CompressionMethod.Snappy }).GetAwaiter().GetResult();
        Dictionary<string, string> metadata = new() { [SweepHeader.Key] = header.ToJson() };
        if (span != null) metadata[ShardSpan.Key] = span.ToJson();
        metadata[FileCheck.Key] = FileCheck.Open;
        _writer.CustomMetadata = metadata;
    }

    /// <summary>Writes a block of rows.</summary>
    /// <exception cref="IOException">The disk is full, or the file cannot be written.</exception>
    public void Add(ReadOnlyMemory<SweepRow> rows)
    {
        using ParquetRowGroupWriter group = _writer.CreateRowGroup();
        for (int i = 0; i < _columns.Length; i++) SweepColumns.WriteAsync(group, _fields[i], _columns[i], rows).GetAwaiter().GetResult();
    }

    /// <summary>Ends the file.</summary>
    /// <exception cref="IOException">The disk is full, or the file cannot be written.</exception>
    public void Complete()
    {
        _writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
        FileCheck.Seal(_stream);
        // Who renames the file may count on it: after a power cut its name does not stand there without its bytes.
        _stream.Flush(true);
        _isComplete = true;
        _stream.Dispose();
    }

    /// <summary>Closes the file. Without <see cref="Complete"/> it cannot be read.</summary>
    public void Dispose()
    {
        if (!_isComplete) _stream.Dispose();
    }
}
