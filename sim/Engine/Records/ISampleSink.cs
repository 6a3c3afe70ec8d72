namespace StarterCtl.Engine.Records;

/// <summary>Takes the samples of a run as they come: a record in memory, a file that is being written, a judge that looks on.</summary>
public interface ISampleSink
{
    /// <summary>Time between the samples that are wanted, microseconds, a whole number of control periods.</summary>
    long PeriodMicroseconds { get; }

    /// <summary>Takes a sample; they come in the order of time.</summary>
    void Add(in Sample sample);
}
