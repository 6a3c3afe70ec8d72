using System;
using System.Globalization;
using System.IO;
using System.Threading;
using nietras.SeparatedValues;

namespace StarterCtl.Engine.Records;

/// <summary>A record as CSV: comma, point, one header line with the names of the signal table.</summary>
public static class CsvRecord
{
    /// <summary>Writes a record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="writer">Receives the text; stays open.</param>
    /// <param name="cancellation">Ends the writing with an <see cref="OperationCanceledException"/>.</param>
    public static void Write(Record record, TextWriter writer, CancellationToken cancellation = default)
    {
        using SepWriter sheet = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture }).To(writer, leaveOpen: true);
        foreach (Sample sample in record.Samples)
        {
            cancellation.ThrowIfCancellationRequested();
            WriteRow(sheet, sample);
        }
    }

    private static void WriteRow(SepWriter sheet, Sample sample)
    {
        using SepWriter.Row row = sheet.NewRow();
        foreach (Signal signal in SignalTable.All) row[signal.Name].Set(Cell(signal, sample));
    }

    private static string Cell(Signal signal, Sample sample)
    {
        if (signal.Word != null) return signal.Word(sample);
        double number = signal.Number(sample);

        // Readings are single precision: nine digits bring every one of them back.
        return double.IsNaN(number) ? "" : number.ToString("G9", CultureInfo.InvariantCulture);
    }
}
