using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>The one seam between the control loop and a board. Adapters translate and decide nothing.</summary>
public interface IBoard
{
    /// <summary>A free-running microsecond counter of any start value; it may wrap.</summary>
    int MicrosecondCounter();

    /// <summary>Reads every input.</summary>
    /// <param name="readings">Receives the readings.</param>
    /// <returns>False when the inputs could not be read; the readings are then not used.</returns>
    bool TryRead(Readings readings);

    /// <summary>Drives every output, opening before closing.</summary>
    void Write(Outputs outputs);
}
