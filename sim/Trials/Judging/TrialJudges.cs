using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>All judges of one trial behind one sink; as much memory for an hour as for a second.</summary>
public sealed class TrialJudges : ISampleSink
{
    private readonly Judge[] _judges;

    /// <summary>Judges to begin a trial with.</summary>
    /// <param name="expectations">What is expected.</param>
    /// <param name="periodMicroseconds">The control period: every tick is looked at.</param>
    public TrialJudges(IEnumerable<Expectation> expectations, long periodMicroseconds)
    {
        _judges = [.. expectations.Select(Judge.Of)];
        PeriodMicroseconds = periodMicroseconds;
    }

    /// <inheritdoc/>
    public long PeriodMicroseconds { get; }

    /// <summary>Time of the last sample, s.</summary>
    public double LastSeconds { get; private set; }

    /// <inheritdoc/>
    public void Add(in Sample sample)
    {
        LastSeconds = sample.TimeSeconds;
        foreach (Judge judge in _judges) judge.Add(sample);
    }

    /// <summary>The outcomes, in the order of the expectations.</summary>
    public Outcome[] End() => [.. _judges.Select(judge => judge.End())];
}
