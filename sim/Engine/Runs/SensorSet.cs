namespace StarterCtl.Engine.Runs;

/// <summary>The sensors of a run that are not ideal.</summary>
internal sealed class SensorSet
{
    private readonly AnalogSensor _volts;
    private readonly AnalogSensor _amps;
    private readonly AnalogSensor _speed;
    private readonly PulsePickup? _pulses;

    /// <summary>Builds them.</summary>
    public SensorSet(SensorModel model, double periodSeconds)
    {
        _volts = new AnalogSensor(model.Voltage, model, 0, periodSeconds);
        _amps = new AnalogSensor(model.Current, model, 1, periodSeconds);
        _speed = new AnalogSensor(model.Speed, model, 2, periodSeconds);
        if (model.PulsesPerRevolution > 0) _pulses = new PulsePickup(model.PulsesPerRevolution, model.PulseTimeoutSeconds);
    }

    /// <summary>Lets the pick-up go wrong, or sound again.</summary>
    public void Obey(RunEvent happening)
    {
        if (_pulses == null) return;
        _pulses.MissingRatio = happening.MissingPulseRatio ?? _pulses.MissingRatio;
        _pulses.ExtraRatio = happening.ExtraPulseRatio ?? _pulses.ExtraRatio;
    }

    /// <summary>Puts readings in the place of what is there.</summary>
    /// <returns>True while the speed is known.</returns>
    public bool Read(double now, ref double volts, ref double amps, ref double speed)
    {
        volts = _volts.Read(volts);
        amps = _amps.Read(amps);
        if (_pulses == null)
        {
            speed = _speed.Read(speed);
            return true;
        }

        _pulses.Look(now, speed);
        speed = _pulses.SpeedRadPerSec;
        return _pulses.IsKnown;
    }
}
