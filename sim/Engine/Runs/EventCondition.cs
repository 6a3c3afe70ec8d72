namespace StarterCtl.Engine.Runs;

/// <summary>
/// What an event waits for. It is looked at on every control tick, behind the controller's decision, and comes true once: where it
/// holds from the beginning, only after it has ceased to hold. The speed is the shaft's own, not the sensor's.
/// </summary>
/// <param name="Kind">What is looked at.</param>
/// <param name="Limit">What it is held against: rad/s, or a stage's number.</param>
/// <param name="AfterSeconds">Time from the tick on which it comes true to the event, s, 0 or more.</param>
public sealed record EventCondition(EventConditionKind Kind, double Limit, double AfterSeconds)
{
    /// <summary>Whether it holds.</summary>
    /// <param name="speedRadPerSec">Speed of the shaft, rad/s.</param>
    /// <param name="stage">Stage in effect of a start or of a running machine; 0 when there is neither.</param>
    public bool Holds(double speedRadPerSec, int stage) => Kind switch
    {
        EventConditionKind.SpeedAbove => speedRadPerSec > Limit,
        EventConditionKind.SpeedBelow => speedRadPerSec < Limit,
        _ => stage >= Limit,
    };
}
