namespace StarterCtl.Engine.Runs;

/// <summary>What the controller gets from an analogue sensor.</summary>
public enum SensorFaultKind
{
    /// <summary>What the sensor makes of what is there.</summary>
    Sound,

    /// <summary>The last reading before, for ever.</summary>
    Stuck,

    /// <summary>The lowest reading of its range: minus the range, or 0 where none is given.</summary>
    OpenWire,
}
