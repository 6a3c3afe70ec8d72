using System;
using System.Device.Gpio;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>A digital input at a pin of the processor.</summary>
public sealed class GpioInput : IDigitalInput
{
    private readonly GpioPin _pin;

    /// <summary>Opens the pin without a pull resistor: an open wire must read as the contact's open state by the panel's own resistor.</summary>
    /// <param name="gpio">The pins.</param>
    /// <param name="pin">Number of the pin.</param>
    /// <exception cref="InvalidOperationException">The pin is open already.</exception>
    /// <exception cref="ArgumentException">The pin cannot be an input.</exception>
    public GpioInput(GpioController gpio, int pin)
    {
        _pin = gpio.OpenPin(pin, PinMode.Input);
    }

    /// <inheritdoc/>
    public bool Read() => _pin.Read() == PinValue.High;
}
