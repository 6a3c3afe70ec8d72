using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>
/// Finds out when an event happened. One that waits for a condition is recognised by the samples, as the controller read them:
/// a stage to the tick, a speed as far as its sensor is right.
/// </summary>
internal sealed class EventWatch(EventMoment moment)
{
    private bool _hasBeenFalse;

    /// <summary>When, s; null while it has not been.</summary>
    public double? Seconds { get; private set; } = moment.AtSeconds;

    /// <summary>Looks at the next sample.</summary>
    public void Look(in Sample sample)
    {
        if (Seconds != null) return;
        bool isStarted = sample.Phase is Phase.Accelerating or Phase.Running;
        bool holds = moment.When!.Holds(sample.SpeedRadPerSec, isStarted ? sample.Stage : 0);
        if (holds && _hasBeenFalse) Seconds = sample.TimeSeconds + moment.When.AfterSeconds;
        _hasBeenFalse |= !holds;
    }
}
