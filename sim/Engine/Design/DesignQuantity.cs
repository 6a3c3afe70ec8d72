namespace StarterCtl.Engine.Design;

/// <summary>The inputs that a design can fail on.</summary>
public enum DesignQuantity
{
    /// <summary>I1.</summary>
    PeakCurrent,

    /// <summary>I2.</summary>
    SwitchingCurrent,

    /// <summary>Number of stages.</summary>
    Stages,

    /// <summary>Use of the slack.</summary>
    Slack,

    /// <summary>Given sections.</summary>
    Sections,

    /// <summary>Given thresholds.</summary>
    CutoutVoltages,

    /// <summary>Drop of both brushes.</summary>
    BrushDrop,
}
