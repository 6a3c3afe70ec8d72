using System;
using System.Device.Adc;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>A channel of the processor's converter.</summary>
public sealed class AdcInput : IAnalogInput
{
    private const int NotRead = -1;

    private readonly AdcChannel _channel;

    /// <summary>Opens the channel.</summary>
    /// <param name="adc">The converter.</param>
    /// <param name="channel">Number of the channel.</param>
    /// <exception cref="Exception">The board's firmware knows no such channel; which exception that is, is up to it.</exception>
    public AdcInput(AdcController adc, int channel)
    {
        _channel = adc.OpenChannel(channel);
        FullScale = adc.MaxValue;
    }

    /// <inheritdoc/>
    public int FullScale { get; }

    /// <inheritdoc/>
    public int Read()
    {
        try
        {
            return _channel.ReadValue();
        }
        catch (Exception)
        {
            return NotRead;
        }
    }
}
