using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>A board whose pins stay closed because its wiring cannot be opened: nothing is read, nothing is driven.</summary>
public sealed class ShutBoard : IBoard
{
    private readonly IBoardPins _pins;

    /// <summary>Builds it; of the board it uses the counter only.</summary>
    public ShutBoard(IBoardPins pins)
    {
        _pins = pins;
    }

    /// <inheritdoc/>
    public int MicrosecondCounter() => _pins.MicrosecondCounter();

    /// <inheritdoc/>
    public bool TryRead(Readings readings) => false;

    /// <inheritdoc/>
    public void Write(Outputs outputs)
    {
    }
}
