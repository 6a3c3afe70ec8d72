namespace StarterCtl.Firmware;

/// <summary>A counter of edges that keeps when the last one came.</summary>
public interface IPulseInput
{
    /// <summary>Reads count and stamp of one and the same edge; an edge in between must not tear them apart.</summary>
    /// <param name="mark">Receives them.</param>
    void Read(EdgeMark mark);
}
