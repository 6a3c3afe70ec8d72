using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Running;

/// <summary>Is told how a run of trials goes; calls may come from several threads, for different trials.</summary>
public interface ITrialWatch
{
    /// <summary>An attempt begins.</summary>
    /// <returns>What takes its samples beside the judges; null for nothing.</returns>
    ISampleSink? Started(Trial trial, int attempt);

    /// <summary>That attempt has ended, however it did.</summary>
    void Ended(Trial trial, int attempt, TrialAttempt ended);

    /// <summary>A trial has its last attempt behind it. Never called for two at once.</summary>
    void Done(TrialResult result);
}
