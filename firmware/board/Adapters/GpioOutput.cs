using System;
using System.Device.Gpio;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>A digital output at a pin of the processor.</summary>
public sealed class GpioOutput : IDigitalOutput
{
    private readonly GpioPin _pin;
    private readonly bool _isHighAtRest;

    /// <summary>
    /// Opens the pin and drives it to its level at rest. Between the two it is low for a moment: what must never be energised, not
    /// even that long, is to be energised by the high level.
    /// </summary>
    /// <param name="gpio">The pins.</param>
    /// <param name="pin">Number of the pin.</param>
    /// <param name="isHigh">Its level at rest.</param>
    /// <exception cref="InvalidOperationException">The pin is open already.</exception>
    /// <exception cref="ArgumentException">The pin cannot be an output.</exception>
    public GpioOutput(GpioController gpio, int pin, bool isHigh)
    {
        _isHighAtRest = isHigh;
        _pin = gpio.OpenPin(pin, PinMode.Output);
        Write(isHigh);
    }

    /// <inheritdoc/>
    public void Write(bool isHigh) => _pin.Write(isHigh ? PinValue.High : PinValue.Low);

    /// <inheritdoc/>
    public bool Read() => _pin.Read() == PinValue.High;

    /// <summary>Drives the pin to its level at rest, if the pin still takes it.</summary>
    public void Rest()
    {
        try
        {
            Write(_isHighAtRest);
        }
        catch (Exception)
        {
            // The outputs behind this one must still be told.
        }
    }
}
