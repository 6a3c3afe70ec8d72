using System;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>A board's pins, kept in memory: the firmware reads and writes them on one side, a plant on the other.</summary>
/// <param name="map">What each pin is for.</param>
public sealed class DeskPins(PinMap map) : IBoardPins
{
    private readonly bool[] _levels = new bool[PinMap.RoleCount];
    private readonly int[] _counts = new int[PinMap.RoleCount];

    /// <summary>The board's clock, microseconds; wraps.</summary>
    public int CounterMicroseconds { get; set; }

    /// <summary>Edges of the pick-up so far; wraps.</summary>
    public int EdgeCount { get; set; }

    /// <summary>When the last one came, by the board's clock.</summary>
    public int LastEdgeMicroseconds { get; set; }

    /// <inheritdoc/>
    public int MicrosecondCounter() => CounterMicroseconds;

    /// <inheritdoc/>
    public IAnalogInput Analog(int pin) => new AnalogPin(this, pin);

    /// <inheritdoc/>
    public IDigitalInput Input(int pin) => new DigitalPin(this, pin);

    /// <inheritdoc/>
    public IPulseInput Pulses(int pin, int directionPin) => new EdgePin(this);

    /// <inheritdoc/>
    public IDigitalOutput Output(int pin, bool isHigh)
    {
        _levels[pin] = isHigh;
        return new DigitalPin(this, pin);
    }

    /// <summary>Puts a quantity on an analogue pin as the counts that a converter makes of it; nothing where the role is not fitted.</summary>
    /// <param name="role">What the pin is for.</param>
    /// <param name="setup">Its channel, by its nominal offset and gain.</param>
    /// <param name="quantity">In the channel's unit.</param>
    public void Show(PinRole role, ChannelCalibration setup, double quantity) =>
        ShowCounts(role, (int)Math.Clamp(Math.Round(setup.OffsetCounts + quantity / setup.UnitsPerCount), 0, DeskWiring.FullScale));

    /// <summary>Puts counts on an analogue pin.</summary>
    /// <param name="role">What the pin is for.</param>
    /// <param name="counts">0 to <see cref="DeskWiring.FullScale"/>.</param>
    public void ShowCounts(PinRole role, int counts)
    {
        if (map.IsFitted(role)) _counts[map.Pin(role)] = counts;
    }

    /// <summary>Closes or opens a contact at a digital input; nothing where the role is not fitted.</summary>
    public void Close(PinRole role, bool isClosed)
    {
        if (map.IsFitted(role)) _levels[map.Pin(role)] = isClosed != map.IsActiveLow(role);
    }

    /// <summary>True while a coil or lamp is energised.</summary>
    public bool IsOn(PinRole role) => map.IsFitted(role) && _levels[map.Pin(role)] != map.IsActiveLow(role);

    private sealed class AnalogPin(DeskPins pins, int pin) : IAnalogInput
    {
        public int FullScale => DeskWiring.FullScale;

        public int Read() => pins._counts[pin];
    }

    private sealed class EdgePin(DeskPins pins) : IPulseInput
    {
        public void Read(EdgeMark mark)
        {
            mark.Edges = pins.EdgeCount;
            mark.LastEdgeMicroseconds = pins.LastEdgeMicroseconds;
        }
    }

    private sealed class DigitalPin(DeskPins pins, int pin) : IDigitalInput, IDigitalOutput
    {
        public bool Read() => pins._levels[pin];

        public void Write(bool isHigh) => pins._levels[pin] = isHigh;
    }
}
