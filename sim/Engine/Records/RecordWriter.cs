using System;
using System.IO;

namespace StarterCtl.Engine.Records;

/// <summary>
/// Writes a record while it grows, in memory that does not. What was flushed is readable whatever comes behind it: a writer that is
/// disposed of without <see cref="Complete"/> leaves what a killed run would leave.
/// </summary>
/// <param name="header">The record's header.</param>
public abstract class RecordWriter(RecordHeader header) : ISampleSink, IDisposable
{
    private const int SamplesBetweenFlushes = 10_000;

    /// <inheritdoc/>
    public long PeriodMicroseconds => Header.RecordPeriodMicroseconds;

    /// <summary>Samples so far.</summary>
    public long Count { get; private set; }

    /// <summary>The record's header.</summary>
    protected RecordHeader Header { get; } = header;

    /// <inheritdoc/>
    /// <exception cref="IOException">The disk is full, or the file cannot be written.</exception>
    public void Add(in Sample sample)
    {
        Write(sample);
        Count++;
        if (Count % SamplesBetweenFlushes == 0) Flush();
    }

    /// <summary>Makes everything so far readable.</summary>
    /// <exception cref="IOException">The disk is full, or the file cannot be written.</exception>
    public abstract void Flush();

    /// <summary>Ends the record.</summary>
    /// <exception cref="IOException">The disk is full, or the file cannot be written.</exception>
    public virtual void Complete() => Flush();

    /// <summary>Frees the files and writes nothing more.</summary>
    public void Dispose()
    {
        Free();
        GC.SuppressFinalize(this);
    }

    /// <summary>Opens a file that others may read while it grows. Nothing is held back in it: what is written is the system's.</summary>
    protected static Stream Create(string path) => new FileStream(path, FileMode.Create, FileAccess.ReadWrite, FileShare.Read | FileShare.Delete, 0);

    /// <summary>Takes a sample.</summary>
    protected abstract void Write(in Sample sample);

    /// <summary>Closes the files without writing to them.</summary>
    protected abstract void Free();
}
