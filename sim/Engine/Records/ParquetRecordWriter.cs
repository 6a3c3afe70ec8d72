using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet.Utils;

namespace StarterCtl.Engine.Records;

/// <summary>
/// A record as Parquet. While it grows it is a folder of complete files, each with its header, for a Parquet file without its end cannot
/// be read; at the end they are joined to one file, row group by row group.
/// </summary>
public sealed class ParquetRecordWriter : RecordWriter
{
    private readonly string _path;
    private readonly Func<string, Stream> _create;
    private readonly List<Sample> _waiting = [];
    private readonly List<string> _parts = [];

    /// <summary>Makes the folder.</summary>
    /// <param name="path">The file that it shall be in the end.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="create">Makes a file; null: on the disk.</param>
    /// <exception cref="IOException">It cannot be made.</exception>
    public ParquetRecordWriter(string path, RecordHeader header, Func<string, Stream>? create = null)
        : base(header)
    {
        _path = path;
        _create = create ?? Create;
        if (Directory.Exists(PartsPath(path))) Directory.Delete(PartsPath(path), true);
        Directory.CreateDirectory(PartsPath(path));
    }

    /// <summary>The folder in which a record grows.</summary>
    public static string PartsPath(string path) => Path.ChangeExtension(path, ".parts");

    /// <inheritdoc/>
    public override void Flush()
    {
        if (_waiting.Count == 0 && _parts.Count > 0) return;
        string part = Path.Combine(PartsPath(_path), (_parts.Count + 1).ToString("D6", CultureInfo.InvariantCulture) + ".parquet");
        using (Stream stream = _create(part + ".new")) ParquetColumns.WriteAsync(stream, Header, _waiting).GetAwaiter().GetResult();
        File.Move(part + ".new", part);
        _parts.Add(part);
        _waiting.Clear();
    }

    /// <inheritdoc/>
    public override void Complete()
    {
        base.Complete();
        using (Stream whole = _create(_path)) JoinAsync(whole).GetAwaiter().GetResult();
        Directory.Delete(PartsPath(_path), true);
    }

    /// <inheritdoc/>
    protected override void Write(in Sample sample) => _waiting.Add(sample);

    /// <inheritdoc/>
    protected override void Free() => _waiting.Clear();

    private async Task JoinAsync(Stream whole)
    {
        await using FileMerger merger = new([.. _parts.Select(part => new FileInfo(part))]);
        await merger.MergeFilesAsync(whole, metadata: new() { [ParquetColumns.HeaderKey] = Header.ToJson() }).ConfigureAwait(false);
    }
}
