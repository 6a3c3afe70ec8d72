using System;
using System.Collections.Generic;
using System.IO;

namespace StarterCtl.Engine.Records;

/// <summary>The file formats of records by their names.</summary>
public static class RecordFormats
{
    /// <summary>Every format with the name that options give it.</summary>
    public static IReadOnlyDictionary<string, RecordFormat> ByName { get; } = new Dictionary<string, RecordFormat>
    {
        ["csv"] = RecordFormat.Csv,
        ["parquet"] = RecordFormat.Parquet,
        ["comtrade"] = RecordFormat.Comtrade,
        ["comtrade-ascii"] = RecordFormat.ComtradeAscii,
        ["vcd"] = RecordFormat.Vcd,
    };

    /// <summary>The files of a record, the one that names it first.</summary>
    /// <param name="format">The format.</param>
    /// <returns>What each file is, and its name's end behind that of the case.</returns>
    public static IReadOnlyList<(string What, string Suffix)> FilesOf(RecordFormat format) => format switch
    {
        RecordFormat.Csv => [("the record", "record.csv"), ("the record's header", "record.json")],
        RecordFormat.Parquet => [("the record", "record.parquet")],
        RecordFormat.Comtrade => [("the record", "record.cfg"), ("its data", "record.dat"), ("its header", "record.hdr")],
        RecordFormat.ComtradeAscii => [("the record", "record-ascii.cfg"), ("its data", "record-ascii.dat"), ("its header", "record-ascii.hdr")],
        _ => [("the record", "record.vcd")],
    };

    /// <summary>The folder in which a record grows; null where it grows in its files.</summary>
    /// <param name="format">The format.</param>
    /// <param name="path">The first of its files.</param>
    public static string? FolderOf(RecordFormat format, string path) => format == RecordFormat.Parquet ? ParquetRecordWriter.PartsPath(path) : null;

    /// <summary>Opens a record's files.</summary>
    /// <param name="format">The format.</param>
    /// <param name="path">The first of its files; the others differ in the extension.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="create">Makes a file; null: on the disk.</param>
    /// <exception cref="IOException">They cannot be made.</exception>
    public static RecordWriter Open(RecordFormat format, string path, RecordHeader header, Func<string, Stream>? create = null) => format switch
    {
        RecordFormat.Csv => new CsvRecordWriter(path, header, create),
        RecordFormat.Parquet => new ParquetRecordWriter(path, header, create),
        RecordFormat.Comtrade or RecordFormat.ComtradeAscii => new ComtradeRecordWriter(path, header, format == RecordFormat.ComtradeAscii, create),
        _ => new VcdRecordWriter(path, header, create),
    };
}
