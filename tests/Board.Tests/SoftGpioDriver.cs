using System;
using System.Collections.Generic;
using System.Device.Gpio;
using System.Threading;

namespace StarterCtl.Board.Tests;

/// <summary>Pins kept in memory behind the desktop's own library; pin 31 can be an input only.</summary>
internal sealed class SoftGpioDriver : GpioDriver
{
    internal const int InputOnlyPin = 31;

    private readonly Dictionary<int, PinMode> _modes = [];
    private readonly Dictionary<int, PinValue> _levels = [];
    private readonly Dictionary<int, PinChangeEventHandler> _handlers = [];

    /// <summary>Levels driven, as "5 High", in order.</summary>
    internal List<string> Writes { get; } = [];

    /// <summary>A pin whose writes fail; none below 0.</summary>
    internal int BrokenPin { get; set; } = -1;

    protected override int PinCount => 40;

    /// <summary>Puts a level at an input, and raises its event as a processor does.</summary>
    internal void Set(int pin, bool isHigh)
    {
        bool wasHigh = Read(pin) == PinValue.High;
        _levels[pin] = isHigh;
        if (wasHigh == isHigh || !_handlers.TryGetValue(pin, out PinChangeEventHandler? handler)) return;
        handler(this, new PinValueChangedEventArgs(isHigh ? PinEventTypes.Rising : PinEventTypes.Falling, pin));
    }

    protected override void OpenPin(int pinNumber) => _levels.TryAdd(pinNumber, PinValue.Low);

    protected override void ClosePin(int pinNumber) => _modes.Remove(pinNumber);

    protected override void SetPinMode(int pinNumber, PinMode mode) => _modes[pinNumber] = mode;

    protected override PinMode GetPinMode(int pinNumber) => _modes[pinNumber];

    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => mode == PinMode.Input || pinNumber != InputOnlyPin;

    protected override PinValue Read(int pinNumber) => _levels.GetValueOrDefault(pinNumber, PinValue.Low);

    protected override void Write(int pinNumber, PinValue value)
    {
        if (pinNumber == BrokenPin) throw new InvalidOperationException($"pin {pinNumber} is broken");
        _levels[pinNumber] = value;
        Writes.Add($"{pinNumber} {value}");
    }

    protected override WaitForEventResult WaitForEvent(int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    protected override void AddCallbackForPinValueChangedEvent(int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback) =>
        _handlers[pinNumber] = _handlers.TryGetValue(pinNumber, out PinChangeEventHandler? before) ? before + callback : callback;

    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) => _handlers.Remove(pinNumber);
}
