using System;
using System.IO;
using System.Threading;

namespace StarterCtl.Engine.Records;

/// <summary>A record of the memory as CSV.</summary>
public static class CsvRecord
{
    /// <summary>Writes a record without a header of its own.</summary>
    /// <param name="record">The record.</param>
    /// <param name="writer">Receives the text; stays open.</param>
    /// <param name="cancellation">Ends the writing with an <see cref="OperationCanceledException"/>.</param>
    public static void Write(Record record, TextWriter writer, CancellationToken cancellation = default)
    {
        CsvRows rows = new(new TextBuffer(writer));
        foreach (Sample sample in record.Samples)
        {
            cancellation.ThrowIfCancellationRequested();
            rows.Add(sample);
        }

        rows.Flush();
    }
}
