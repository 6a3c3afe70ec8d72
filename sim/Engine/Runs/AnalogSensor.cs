using System;

namespace StarterCtl.Engine.Runs;

/// <summary>One sensor and its way to a reading: filter, gain and offset, noise, range, steps of the converter.</summary>
public sealed class AnalogSensor
{
    private readonly SensorChannel _channel;
    private readonly RandomNumbers _random;
    private readonly double _filterShare;
    private readonly double _step;
    private double _filtered;
    private bool _hasRead;

    /// <summary>Builds it.</summary>
    /// <param name="channel">What it makes of what is there.</param>
    /// <param name="model">What all sensors share.</param>
    /// <param name="stream">Number of the sensor: each has noise of its own.</param>
    /// <param name="periodSeconds">Time between two readings, s, above 0.</param>
    public AnalogSensor(SensorChannel channel, SensorModel model, int stream, double periodSeconds)
    {
        _channel = channel;
        _random = new RandomNumbers(new RandomNumbers(((ulong)model.Seed << 8) + (ulong)stream).Next());
        _filterShare = model.FilterSeconds > 0 ? 1 - Math.Exp(-periodSeconds / model.FilterSeconds) : 1;
        _step = model.Bits > 0 && double.IsFinite(channel.Range) ? 2 * channel.Range / (1L << model.Bits) : 0;
    }

    /// <summary>The reading one period after the last.</summary>
    /// <param name="value">What is there.</param>
    public double Read(double value)
    {
        // The filter has stood long at the first value; behind it each new value counts from one reading to the next.
        _filtered = _hasRead && _filterShare < 1 ? _filtered + _filterShare * (value - _filtered) : value;
        _hasRead = true;
        double reading = _channel.Gain * _filtered + _channel.Offset;
        if (_channel.Noise > 0) reading += _channel.Noise * _random.Normal();
        if (_step == 0) return Math.Clamp(reading, -_channel.Range, _channel.Range);
        // As any two's complement converter it reaches minus the range, and one step less than plus the range.
        return _step * Math.Clamp(Math.Round(reading / _step), -_channel.Range / _step, _channel.Range / _step - 1);
    }
}
