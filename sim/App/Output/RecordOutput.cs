using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Records;

namespace StarterCtl.App.Output;

/// <summary>The records of one run in the formats that were asked for, written beside their places as the run goes.</summary>
/// <param name="files">The verb's files; whoever owns them commits.</param>
/// <param name="place">Where they go.</param>
/// <param name="formats">At least one format.</param>
public sealed class RecordOutput(OutputFiles files, OutputPlace place, IReadOnlyList<RecordFormat> formats) : ISampleSink, IDisposable
{
    private readonly List<(string Path, string Beside, RecordWriter Writer)> _records = [];

    /// <inheritdoc/>
    public long PeriodMicroseconds { get; private set; }

    /// <summary>Opens every record.</summary>
    /// <param name="header">The header of all of them.</param>
    /// <exception cref="OutputException">A file cannot be made.</exception>
    public ISampleSink Open(RecordHeader header)
    {
        PeriodMicroseconds = header.RecordPeriodMicroseconds;
        foreach (RecordFormat format in formats) Open(format, header);
        return this;
    }

    /// <inheritdoc/>
    /// <exception cref="OutputException">A file cannot be written; what is there stays, readable.</exception>
    public void Add(in Sample sample)
    {
        foreach ((string path, string beside, RecordWriter writer) in _records)
        {
            try
            {
                writer.Add(sample);
            }
            catch (IOException error)
            {
                throw Ended(path, beside, error);
            }
        }
    }

    /// <summary>Ends every record.</summary>
    /// <exception cref="OutputException">A file cannot be written; what is there stays, readable.</exception>
    public void Complete()
    {
        foreach ((string path, string beside, RecordWriter writer) in _records)
        {
            try
            {
                writer.Complete();
            }
            catch (IOException error)
            {
                throw Ended(path, beside, error);
            }

            writer.Dispose();
        }
    }

    /// <summary>Frees the files.</summary>
    public void Dispose()
    {
        foreach ((_, _, RecordWriter writer) in _records) writer.Dispose();
    }

    private void Open(RecordFormat format, RecordHeader header)
    {
        IReadOnlyList<(string What, string Suffix)> parts = RecordFormats.FilesOf(format);
        string path = place.PathOf(parts[0].Suffix);
        string[] beside = [.. parts.Select(part => files.Reserve(part.What, Path.ChangeExtension(path, Path.GetExtension(part.Suffix))))];
        if (RecordFormats.FolderOf(format, beside[0]) is string folder) files.RemoveInTheEnd(folder);
        try
        {
            _records.Add((path, beside[0], RecordFormats.Open(format, beside[0], header)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw OutputException.Of(path, error);
        }
    }

    private OutputException Ended(string path, string beside, IOException error)
    {
        files.Keep();
        return OutputException.Of(path, error, $"; what was recorded so far is kept at {beside}");
    }
}
