namespace StarterCtl.Engine.Runs;

/// <summary>What an event can wait for.</summary>
public enum EventConditionKind
{
    /// <summary>The speed rises above a limit.</summary>
    SpeedAbove,

    /// <summary>The speed falls below a limit.</summary>
    SpeedBelow,

    /// <summary>A start reaches a stage.</summary>
    StageReached,
}
