using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>A board made of a wiring and pins.</summary>
public sealed class PanelBoard : IBoard
{
    private readonly IBoardPins _pins;
    private int _lastMicroseconds;

    /// <summary>Its outputs.</summary>
    public readonly OutputPanel Outputs;

    /// <summary>Its inputs.</summary>
    public readonly InputPanel Inputs;

    /// <summary>Opens the outputs, all of them off, and then the inputs.</summary>
    /// <param name="map">A wiring that <see cref="BoardCheck"/> has passed.</param>
    /// <param name="pins">The board.</param>
    public PanelBoard(PinMap map, IBoardPins pins)
    {
        _pins = pins;
        Outputs = new OutputPanel(map, pins);
        Inputs = new InputPanel(map, pins);
        _lastMicroseconds = pins.MicrosecondCounter();
    }

    /// <inheritdoc/>
    public int MicrosecondCounter() => _pins.MicrosecondCounter();

    /// <inheritdoc/>
    public bool TryRead(Readings readings)
    {
        int now = _pins.MicrosecondCounter();
        Inputs.Read(now, unchecked(now - _lastMicroseconds), readings);
        _lastMicroseconds = now;
        return true;
    }

    /// <inheritdoc/>
    public void Write(Outputs outputs) => Outputs.Write(outputs);
}
