namespace StarterCtl.Engine.Design;

/// <summary>What to do with the slack that rounding the stage count up leaves.</summary>
public enum Slack
{
    /// <summary>Keep both currents; the last section takes the rest.</summary>
    LastSection,

    /// <summary>Keep the peak current; raise the switching current until all stages are equal.</summary>
    RaiseSwitchingCurrent,

    /// <summary>Keep the switching current; lower the peak current until all stages are equal.</summary>
    LowerPeakCurrent,
}
