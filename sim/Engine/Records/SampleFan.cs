using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace StarterCtl.Engine.Records;

/// <summary>Hands the samples of one run to several takers, to each at its own period.</summary>
public sealed class SampleFan : ISampleSink
{
    private readonly ISampleSink[] _sinks;
    private long _nextMicroseconds = -1;

    /// <summary>Gathers the takers.</summary>
    /// <param name="sinks">At least one; their periods are whole numbers of control periods.</param>
    public SampleFan(params IReadOnlyList<ISampleSink> sinks)
    {
        _sinks = [.. sinks];
        PeriodMicroseconds = _sinks.Select(sink => sink.PeriodMicroseconds).Aggregate((one, other) => (long)BigInteger.GreatestCommonDivisor(one, other));
    }

    /// <inheritdoc/>
    public long PeriodMicroseconds { get; }

    /// <inheritdoc/>
    public void Add(in Sample sample)
    {
        // The first is the controller's power-up, which comes before the grid of any period and which all of them take.
        foreach (ISampleSink sink in _sinks)
        {
            if (_nextMicroseconds < 0 || _nextMicroseconds % sink.PeriodMicroseconds == 0) sink.Add(sample);
        }

        _nextMicroseconds = _nextMicroseconds < 0 ? 0 : _nextMicroseconds + PeriodMicroseconds;
    }
}
