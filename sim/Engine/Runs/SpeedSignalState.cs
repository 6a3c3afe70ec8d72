namespace StarterCtl.Engine.Runs;

/// <summary>What the controller gets from the speed pick-up.</summary>
public enum SpeedSignalState
{
    /// <summary>The shaft's speed.</summary>
    Sound,

    /// <summary>Nothing, and the board knows it: the speed is marked as not valid.</summary>
    Lost,

    /// <summary>The last speed before, for ever, marked as valid.</summary>
    Stuck,

    /// <summary>Zero, marked as valid, whatever the shaft does.</summary>
    Zero,
}
