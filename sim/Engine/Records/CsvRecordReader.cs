using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using nietras.SeparatedValues;

namespace StarterCtl.Engine.Records;

/// <summary>Reads a CSV record with the header beside it.</summary>
internal sealed class CsvRecordReader : RecordReader
{
    private const int LinesBefore = 2;

    private readonly SepReader _sheet;
    private readonly Signal?[] _columns;
    private readonly HeardStream _text;
    private long _rows;
    private string? _damage;

    private CsvRecordReader(RecordHeader header, SepReader sheet, HeardStream text)
        : base(header)
    {
        _sheet = sheet;
        _text = text;
        Dictionary<string, Signal> signals = SignalTable.All.ToDictionary(signal => signal.Name);
        _columns = [.. sheet.Header.ColNames.Select(signals.GetValueOrDefault)];
    }

    /// <summary>Opens both files.</summary>
    public static new CsvRecordReader Open(string path)
    {
        string beside = CsvRecordWriter.HeaderPath(path);
        if (!File.Exists(beside)) throw new RecordException(beside, "no such file", "the header that was written beside the record");
        RecordHeader header = RecordHeader.Read(beside, File.ReadAllText(beside));
        FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Open(path, header, stream, stream.Length);
    }

    /// <summary>Reads the rows of a stream.</summary>
    /// <param name="place">What to call it in messages.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="stream">The CSV; closed with the reader, or at once when this fails.</param>
    /// <param name="totalBytes">Its length.</param>
    public static CsvRecordReader Open(string place, RecordHeader header, Stream stream, long totalBytes)
    {
        HeardStream text = new(stream, totalBytes);
        try
        {
            SepReader sheet = Sep.New(',').Reader(options => options with { CultureInfo = CultureInfo.InvariantCulture, DisableColCountCheck = true }).From(text);
            CheckColumns(place, sheet.Header.ColNames);
            return new CsvRecordReader(header, sheet, text);
        }
        catch
        {
            text.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public override double Part => _text.Part;

    /// <inheritdoc/>
    protected override IEnumerable<Sample> Rows()
    {
        // A row counts when the next one has begun or its line has ended: a number that was cut off looks like a whole one.
        Sample last = default;
        bool hasLast = false;
        while (MoveNext())
        {
            if (hasLast) yield return Counted(last);
            hasLast = Read(_sheet.Current, out last);
            if (!hasLast) yield break;
        }

        bool isWhole = _damage != null || _text.LastByte == '\n';
        if (hasLast && isWhole) yield return Counted(last);
        if (_damage != null) Break = At(_damage);
        else if (hasLast && !isWhole) Break = At("a line that has no end");
    }

    /// <inheritdoc/>
    protected override void Free() => _sheet.Dispose();

    // Packed text that is damaged cannot be unpacked any further.
    private bool MoveNext()
    {
        try
        {
            return _sheet.MoveNext();
        }
        catch (InvalidDataException error)
        {
            _damage = error.Message;
            return false;
        }
    }

    private Sample Counted(Sample sample)
    {
        _rows++;
        return sample;
    }

    private bool Read(SepReader.Row row, out Sample sample)
    {
        sample = default;
        if (row.ColCount != _columns.Length)
        {
            Break = At($"{row.ColCount} cells; allowed: {_columns.Length}");
            return false;
        }

        for (int column = 0; column < _columns.Length; column++)
        {
            if (_columns[column] is not Signal signal) continue;
            ReadOnlySpan<char> cell = row[column].Span;
            if (!TryRead(signal, cell, out double number))
            {
                Break = At($"{signal.Name}: \"{cell}\"");
                return false;
            }

            signal.Put(ref sample, number);
        }

        return true;
    }

    private static bool TryRead(Signal signal, ReadOnlySpan<char> cell, out double number)
    {
        // Most cells of a record are one digit.
        if (cell.Length == 1 && (uint)(cell[0] - '0') < 10)
        {
            number = cell[0] - '0';
            return signal.Kind != SignalKind.Switch || number <= 1;
        }

        int whole = 0;
        return signal.Kind switch
        {
            SignalKind.Switch => !IsWhole(0, out number),
            SignalKind.Real => TryReadReal(cell, out number),
            SignalKind.LongReal => TryReadLongReal(cell, out number),
            SignalKind.Id => signal.Words!.TryRead(cell, out whole) & IsWhole(whole, out number),
            _ => int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out whole) & IsWhole(whole, out number),
        };
    }

    private static bool IsWhole(int whole, out double number)
    {
        number = whole;
        return true;
    }

    private static bool TryReadReal(ReadOnlySpan<char> cell, out double number)
    {
        bool isRead = float.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out float real) || cell.IsEmpty;
        number = cell.IsEmpty ? double.NaN : real;
        return isRead;
    }

    private static bool TryReadLongReal(ReadOnlySpan<char> cell, out double number)
    {
        bool isRead = double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out number) || cell.IsEmpty;
        if (cell.IsEmpty) number = double.NaN;
        return isRead;
    }

    private RecordBreak At(string found) => new(_rows, $"line {_rows + LinesBefore}", found);
}
