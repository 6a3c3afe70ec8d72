namespace StarterCtl.Firmware;

/// <summary>How edges of a pick-up or an encoder become a speed. Filled once, not changed afterwards.</summary>
public sealed class PulseSetup
{
    private const float RadPerTurn = 6.28318531f;

    /// <summary>Edges that are counted in one turn; 1 or more.</summary>
    public int EdgesPerTurn = 1;

    /// <summary>
    /// Least time over which a speed is measured, microseconds, above 0. The stamps' resolution divided by it is the relative error at
    /// high speed; half of it is the delay there.
    /// </summary>
    public int ShortestSpanMicroseconds = 5000;

    /// <summary>Largest acceleration and deceleration that the shaft can have, rad/s2; above 0.</summary>
    public float HighestRadPerSecSquared;

    /// <summary>Most edges in a second that the board can count; above 0.</summary>
    public int MostEdgesPerSecond;

    /// <summary>Angle between two edges, rad.</summary>
    public float RadPerEdge => EdgesPerTurn > 0 ? RadPerTurn / EdgesPerTurn : 0f;
}
