namespace StarterCtl.Engine.Cases;

/// <summary>How likely the values of a tolerance are.</summary>
public enum ToleranceShape
{
    /// <summary>Every value between the limits is as likely as any other.</summary>
    Uniform,

    /// <summary>
    /// Normal around the middle of the limits, which lie three standard deviations from it; what would lie beyond does not occur, and
    /// the rest is as much more likely.
    /// </summary>
    Normal,

    /// <summary>Most likely at the nominal value, falling in a straight line to nothing at either limit.</summary>
    Triangular,
}
