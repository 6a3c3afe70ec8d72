using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Running;

/// <summary>Hands samples to the judges and to a record; both take every tick.</summary>
internal sealed class BothSinks(ISampleSink judges, ISampleSink record) : ISampleSink
{
    /// <inheritdoc/>
    public long PeriodMicroseconds => judges.PeriodMicroseconds;

    /// <inheritdoc/>
    public void Add(in Sample sample)
    {
        judges.Add(sample);
        record.Add(sample);
    }
}
