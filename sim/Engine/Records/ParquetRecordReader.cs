using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet;

namespace StarterCtl.Engine.Records;

/// <summary>Reads a Parquet record, or the parts of one that was never finished.</summary>
internal sealed class ParquetRecordReader : RecordReader
{
    private readonly IReadOnlyList<string> _paths;
    private ParquetReader _reader;
    private Sample[] _samples = [];
    private long _rows;
    private double _part;

    private ParquetRecordReader(RecordHeader header, IReadOnlyList<string> paths, ParquetReader reader)
        : base(header)
    {
        _paths = paths;
        _reader = reader;
    }

    /// <summary>Opens the files.</summary>
    /// <param name="place">What to call them in messages.</param>
    /// <param name="paths">The files in their order.</param>
    public static ParquetRecordReader Open(string place, IReadOnlyList<string> paths)
    {
        const string allowed = "a whole Parquet record, or the folder of parts that a run leaves when it is killed";
        if (paths.Count == 0) throw new RecordException(place, "a folder without Parquet files", allowed);
        ParquetReader reader = TryOpen(paths[0], out string found) ?? throw new RecordException(paths[0], found, allowed);
        CheckColumns(place, [.. reader.Schema.GetDataFields().Select(field => field.Name)]);
        if (!reader.CustomMetadata.TryGetValue(ParquetColumns.HeaderKey, out string? json)) throw new RecordException(place, $"no {ParquetColumns.HeaderKey} in its metadata", allowed);
        return new ParquetRecordReader(RecordHeader.Read(place, json), paths, reader);
    }

    /// <inheritdoc/>
    public override double Part => _part;

    /// <inheritdoc/>
    protected override IEnumerable<Sample> Rows()
    {
        for (int file = 0; file < _paths.Count; file++)
        {
            string path = _paths[file];
            if (!Next(path)) yield break;
            for (int group = 0; group < _reader.RowGroupCount; group++)
            {
                int count = Read(path, group);
                for (int i = 0; i < count; i++) yield return _samples[i];
                if (Break != null) yield break;
                _rows += count;
                _part = (file + (group + 1.0) / _reader.RowGroupCount) / _paths.Count;
            }
        }
    }

    /// <inheritdoc/>
    protected override void Free() => _reader.DisposeAsync().AsTask().GetAwaiter().GetResult();

    private bool Next(string path)
    {
        if (path == _paths[0]) return true;
        Free();
        if (TryOpen(path, out string found) is ParquetReader reader)
        {
            _reader = reader;
            return true;
        }

        Break = new(_rows, path, found);
        return false;
    }

    private int Read(string path, int group)
    {
        using ParquetRowGroupReader rows = _reader.OpenRowGroupReader(group);
        int count = (int)rows.RowCount;
        if (_samples.Length < count) _samples = new Sample[count];
        try
        {
            ParquetColumns.ReadAsync(_reader.Schema.GetDataFields(), rows, _samples.AsMemory(0, count)).GetAwaiter().GetResult();
            return count;
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            // Whatever a broken page makes the library say; nothing of its row group is used.
            Break = new(_rows, $"byte {rows.RowGroup.FileOffset ?? 0} of {path}", $"row group {group + 1} is damaged ({error.Message})");
            return 0;
        }
    }

    private static ParquetReader? TryOpen(string path, out string found)
    {
        found = "";
        try
        {
            return Task.Run(() => ParquetReader.CreateAsync(path)).GetAwaiter().GetResult();
        }
        catch (Exception error) when (error is not (UnauthorizedAccessException or FileNotFoundException or OutOfMemoryException))
        {
            // The list of what is in the file is its end: without it nothing is known.
            found = $"{new FileInfo(path).Length} bytes whose end is not that of a Parquet file ({error.Message})";
            return null;
        }
    }
}
