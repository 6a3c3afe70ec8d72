using System;
using System.Device.Gpio;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>
/// Counts rising edges by the pin's events, and stamps each when its event is delivered. An interpreter delivers events when it comes
/// to them, so the stamp is late by up to what the program does in between.
/// </summary>
public sealed class EdgeCounter : IPulseInput
{
    private readonly IBoardPins _clock;
    private readonly GpioInput? _direction;
    // The pin raises events as long as it lives.
    private readonly GpioPin _pin;
    private readonly object _lock = new object();
    private int _edges;
    private int _lastEdgeMicroseconds;

    /// <summary>Opens the pins and begins to count.</summary>
    /// <param name="gpio">The pins.</param>
    /// <param name="pin">The pick-up, or the encoder's first track.</param>
    /// <param name="directionPin">The second track, low while the shaft turns forwards; <see cref="PinMap.NotFitted"/> counts upwards only.</param>
    /// <param name="clock">Stamps the edges.</param>
    /// <exception cref="InvalidOperationException">A pin is open already.</exception>
    /// <exception cref="ArgumentException">A pin cannot be an input.</exception>
    public EdgeCounter(GpioController gpio, int pin, int directionPin, IBoardPins clock)
    {
        _clock = clock;
        if (directionPin != PinMap.NotFitted) _direction = new GpioInput(gpio, directionPin);
        _pin = gpio.OpenPin(pin, PinMode.Input);
        _pin.ValueChanged += OnChanged;
    }

    /// <inheritdoc/>
    public void Read(EdgeMark mark)
    {
        lock (_lock)
        {
            mark.Edges = _edges;
            mark.LastEdgeMicroseconds = _lastEdgeMicroseconds;
        }
    }

    private void OnChanged(object sender, PinValueChangedEventArgs e)
    {
        if (e.ChangeType != PinEventTypes.Rising) return;
        int now = _clock.MicrosecondCounter();
        bool isBackwards = _direction != null && _direction.Read();
        lock (_lock)
        {
            _edges = unchecked(_edges + (isBackwards ? -1 : 1));
            _lastEdgeMicroseconds = now;
        }
    }
}
