namespace StarterCtl.Engine.Runs;

/// <summary>What an operator can do at the panel.</summary>
public enum OperatorCommand
{
    /// <summary>Press start for a moment.</summary>
    Start,

    /// <summary>Press stop for a moment.</summary>
    Stop,

    /// <summary>Press reset for a moment.</summary>
    Reset,

    /// <summary>Open the hard-wired stop chain; it stays open.</summary>
    EmergencyStop,

    /// <summary>Close the hard-wired stop chain again.</summary>
    ReleaseEmergencyStop,
}
