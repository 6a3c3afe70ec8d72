using System.Globalization;
using System.IO;
using nietras.SeparatedValues;

namespace StarterCtl.Engine.Records;

/// <summary>A record as CSV: comma, point, one header line with the names of the signal table.</summary>
public static class CsvRecord
{
    /// <summary>Writes a record.</summary>
    public static void Write(Record record, TextWriter writer)
    {
        using SepWriter sheet = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture }).To(writer, leaveOpen: true);
        foreach (Sample sample in record.Samples)
        {
            using SepWriter.Row row = sheet.NewRow();
            foreach (Signal signal in SignalTable.All)
            {
                if (signal.Word != null)
                {
                    row[signal.Name].Set(signal.Word(sample));
                    continue;
                }

                double number = signal.Number(sample);
                // Readings are single precision: nine digits bring every one of them back.
                if (!double.IsNaN(number)) row[signal.Name].Set(number.ToString("G9", CultureInfo.InvariantCulture));
                else row[signal.Name].Set("");
            }
        }
    }
}
