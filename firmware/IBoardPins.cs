namespace StarterCtl.Firmware;

/// <summary>The pins of a board by number: all that is left to write for a new board. Called before the loop begins, never in it.</summary>
public interface IBoardPins
{
    /// <summary>A free-running microsecond counter of any start value; it may wrap. Edges are stamped by it.</summary>
    int MicrosecondCounter();

    /// <summary>Opens an analogue input.</summary>
    IAnalogInput Analog(int pin);

    /// <summary>Opens a digital input.</summary>
    IDigitalInput Input(int pin);

    /// <summary>Opens an edge counter.</summary>
    /// <param name="pin">Pick-up, or the encoder's first track.</param>
    /// <param name="directionPin">The encoder's second track; <see cref="PinMap.NotFitted"/> counts upwards only.</param>
    IPulseInput Pulses(int pin, int directionPin);

    /// <summary>Opens a digital output.</summary>
    /// <param name="pin">The pin.</param>
    /// <param name="isHigh">Its level from the first instant on.</param>
    IDigitalOutput Output(int pin, bool isHigh);
}
