using System.Collections.Generic;

namespace StarterCtl.Engine.Records;

/// <summary>Samples of one run in the order of time.</summary>
public sealed class Record
{
    private readonly List<Sample> _samples = [];

    /// <summary>Opens an empty record.</summary>
    /// <param name="periodMicroseconds">Time between kept samples; samples in between are dropped.</param>
    public Record(long periodMicroseconds)
    {
        PeriodMicroseconds = periodMicroseconds;
    }

    /// <summary>Time between kept samples, microseconds.</summary>
    public long PeriodMicroseconds { get; }

    /// <summary>The samples.</summary>
    public IReadOnlyList<Sample> Samples => _samples;

    /// <summary>Keeps a sample.</summary>
    public void Add(in Sample sample) => _samples.Add(sample);
}
