namespace StarterCtl.Firmware;

/// <summary>How many edges there were, and when the last one came.</summary>
public sealed class EdgeMark
{
    /// <summary>Edges since power-up; wraps. An encoder's goes down while the shaft turns backwards.</summary>
    public int Edges;

    /// <summary>The board's microsecond counter at the last edge; any number before the first.</summary>
    public int LastEdgeMicroseconds;
}
