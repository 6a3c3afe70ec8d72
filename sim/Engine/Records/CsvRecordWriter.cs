using System;
using System.IO;
using System.Text;

namespace StarterCtl.Engine.Records;

/// <summary>A record as CSV: comma, point, one line with the names of the signal table first. Its header is a JSON file beside it.</summary>
public sealed class CsvRecordWriter : RecordWriter
{
    private readonly Stream _stream;
    private readonly CsvRows _rows;

    /// <summary>Opens both files.</summary>
    /// <param name="path">The CSV file.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="create">Makes a file; null: on the disk.</param>
    /// <exception cref="IOException">They cannot be made.</exception>
    public CsvRecordWriter(string path, RecordHeader header, Func<string, Stream>? create = null)
        : base(header)
    {
        using (Stream beside = (create ?? Create)(HeaderPath(path))) beside.Write(Encoding.UTF8.GetBytes(header.ToJson() + "\n"));
        _stream = (create ?? Create)(path);
        _rows = new CsvRows(TextBuffer.On(_stream));
    }

    /// <summary>The file beside a CSV record that has its header.</summary>
    public static string HeaderPath(string path) => Path.ChangeExtension(path, ".json");

    /// <inheritdoc/>
    public override void Flush() => _rows.Flush();

    /// <inheritdoc/>
    protected override void Write(in Sample sample) => _rows.Add(sample);

    /// <inheritdoc/>
    protected override void Free() => _stream.Dispose();
}
