using System;
using System.Device.Adc;
using System.Device.Gpio;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>The processor's own pins and converter. Each wired role gets one.</summary>
public sealed class ProcessorPins : IBoardPins
{
    // A tick of the clock is 0.1 us.
    private const long TicksPerMicrosecond = 10;

    private readonly GpioController _gpio = new GpioController();
    private readonly AdcController _adc = new AdcController();
    private readonly GpioOutput?[] _outputs = new GpioOutput?[PinMap.RoleCount];
    private int _outputCount;

    /// <inheritdoc/>
    /// <remarks>In microseconds; how often it really goes on is up to the board's firmware. Nothing here sets the clock.</remarks>
    public int MicrosecondCounter() => unchecked((int)(DateTime.UtcNow.Ticks / TicksPerMicrosecond));

    /// <inheritdoc/>
    public IAnalogInput Analog(int pin) => new AdcInput(_adc, pin - Wiring.FirstChannel);

    /// <inheritdoc/>
    public IDigitalInput Input(int pin) => new GpioInput(_gpio, pin);

    /// <inheritdoc/>
    public IPulseInput Pulses(int pin, int directionPin) => new EdgeCounter(_gpio, pin, directionPin, this);

    /// <inheritdoc/>
    public IDigitalOutput Output(int pin, bool isHigh)
    {
        GpioOutput output = new GpioOutput(_gpio, pin, isHigh);
        _outputs[_outputCount++] = output;
        return output;
    }

    /// <summary>Drives every output to its level at rest, whatever becomes of any of them.</summary>
    public void Rest()
    {
        for (int i = 0; i < _outputCount; i++) _outputs[i]?.Rest();
    }
}
