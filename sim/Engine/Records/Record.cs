using System.Collections.Generic;

namespace StarterCtl.Engine.Records;

/// <summary>Samples of one run at a fixed period, in the order of time.</summary>
public sealed class Record : ISampleSink
{
    private readonly List<Sample> _samples = [];

    /// <summary>Opens an empty record.</summary>
    /// <param name="periodMicroseconds">Time between samples; whoever fills the record keeps to it.</param>
    public Record(long periodMicroseconds)
    {
        PeriodMicroseconds = periodMicroseconds;
    }

    /// <inheritdoc/>
    public long PeriodMicroseconds { get; }

    /// <summary>The samples.</summary>
    public IReadOnlyList<Sample> Samples => _samples;

    /// <inheritdoc/>
    public void Add(in Sample sample) => _samples.Add(sample);
}
