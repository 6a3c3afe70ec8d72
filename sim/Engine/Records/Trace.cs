using System.Collections.Generic;

namespace StarterCtl.Engine.Records;

/// <summary>
/// Samples for pictures and sums, whatever period the record keeps: dense right behind every change, ever wider apart as
/// things settle, so that an hour costs little more than a second.
/// </summary>
public sealed class Trace
{
    // Widest gap, as a part of the time since the last change.
    private const double WidestGap = 0.005;

    private readonly List<Sample> _samples = [];
    private double _changedSeconds = double.NegativeInfinity;
    private double _keptSeconds = double.NegativeInfinity;

    /// <summary>The samples in the order of time.</summary>
    public IReadOnlyList<Sample> Samples => _samples;

    /// <summary>Says that something changed: a contact, the load, the supply, a phase.</summary>
    public void Changed(double seconds)
    {
        _changedSeconds = seconds;
        _keptSeconds = double.NegativeInfinity;
    }

    /// <summary>True when a sample of this time is wanted.</summary>
    public bool Wants(double seconds) => seconds - _keptSeconds >= WidestGap * (seconds - _changedSeconds);

    /// <summary>Keeps a sample, unless one of the same time is there.</summary>
    public void Add(in Sample sample)
    {
        if (_samples.Count > 0 && sample.TimeSeconds <= _samples[^1].TimeSeconds) return;
        _samples.Add(sample);
        _keptSeconds = sample.TimeSeconds;
    }
}
