namespace StarterCtl.Engine.Cases;

/// <content>Keys of what the sensors make of what is there.</content>
public static partial class CaseKeys
{
    /// <summary><c>sensors.current-noise</c>: noise of the reading of the armature current, one standard deviation.</summary>
    public static readonly CaseKey SensorsCurrentNoise =
        new("sensors.current-noise", CaseValueKind.Quantity, "\"1.5 A\"", "Noise of the reading of the armature current, one standard deviation")
        { Range = CaseRange.From0(Dimension.Current, "1000 kA"), DefaultText = "0 A" };

    /// <summary><c>sensors.current-gain</c>: what the sensor of the armature current reads over what is there.</summary>
    public static readonly CaseKey SensorsCurrentGain =
        new("sensors.current-gain", CaseValueKind.Ratio, "1.02", "What the sensor of the armature current reads over what is there")
        { Range = new CaseRange(-10, true, 10, true, "-10 to 10"), DefaultText = "1" };

    /// <summary><c>sensors.current-offset</c>: what the sensor of the armature current reads where there is none.</summary>
    public static readonly CaseKey SensorsCurrentOffset =
        new("sensors.current-offset", CaseValueKind.Quantity, "\"-2 A\"", "What the sensor of the armature current reads where there is none")
        { Range = CaseRange.Between(Dimension.Current, "-1000 kA", "1000 kA"), DefaultText = "0 A" };

    /// <summary><c>sensors.current-range</c>: largest armature current of either sign that is read; beyond it the reading stays.</summary>
    public static readonly CaseKey SensorsCurrentRange =
        new("sensors.current-range", CaseValueKind.Quantity, "\"400 A\"", "Largest armature current of either sign that is read; beyond it the reading stays")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA") };

    /// <summary><c>sensors.voltage-noise</c>: noise of the reading of the supply voltage, one standard deviation.</summary>
    public static readonly CaseKey SensorsVoltageNoise =
        new("sensors.voltage-noise", CaseValueKind.Quantity, "\"0.8 V\"", "Noise of the reading of the supply voltage, one standard deviation")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV"), DefaultText = "0 V" };

    /// <summary><c>sensors.voltage-gain</c>: what the sensor of the supply voltage reads over what is there.</summary>
    public static readonly CaseKey SensorsVoltageGain =
        new("sensors.voltage-gain", CaseValueKind.Ratio, "1.02", "What the sensor of the supply voltage reads over what is there")
        { Range = new CaseRange(-10, true, 10, true, "-10 to 10"), DefaultText = "1" };

    /// <summary><c>sensors.voltage-offset</c>: what the sensor of the supply voltage reads where there is none.</summary>
    public static readonly CaseKey SensorsVoltageOffset =
        new("sensors.voltage-offset", CaseValueKind.Quantity, "\"-1.5 V\"", "What the sensor of the supply voltage reads where there is none")
        { Range = CaseRange.Between(Dimension.Voltage, "-100 kV", "100 kV"), DefaultText = "0 V" };

    /// <summary><c>sensors.voltage-range</c>: largest supply voltage of either sign that is read; beyond it the reading stays.</summary>
    public static readonly CaseKey SensorsVoltageRange =
        new("sensors.voltage-range", CaseValueKind.Quantity, "\"400 V\"", "Largest supply voltage of either sign that is read; beyond it the reading stays")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>sensors.speed-noise</c>: noise of the reading of the speed, one standard deviation.</summary>
    public static readonly CaseKey SensorsSpeedNoise =
        new("sensors.speed-noise", CaseValueKind.Quantity, "\"2 rpm\"", "Noise of the reading of the speed, one standard deviation")
        { Range = CaseRange.From0(Dimension.Speed, "100000 rpm"), DefaultText = "0 rpm" };

    /// <summary><c>sensors.speed-gain</c>: what the sensor of the speed reads over what is there.</summary>
    public static readonly CaseKey SensorsSpeedGain =
        new("sensors.speed-gain", CaseValueKind.Ratio, "1.02", "What the sensor of the speed reads over what is there")
        { Range = new CaseRange(-10, true, 10, true, "-10 to 10"), DefaultText = "1" };

    /// <summary><c>sensors.speed-offset</c>: what the sensor of the speed reads where there is none.</summary>
    public static readonly CaseKey SensorsSpeedOffset =
        new("sensors.speed-offset", CaseValueKind.Quantity, "\"-3 rpm\"", "What the sensor of the speed reads where there is none")
        { Range = CaseRange.Between(Dimension.Speed, "-100000 rpm", "100000 rpm"), DefaultText = "0 rpm" };

    /// <summary><c>sensors.speed-range</c>: largest speed of either sign that is read; beyond it the reading stays.</summary>
    public static readonly CaseKey SensorsSpeedRange =
        new("sensors.speed-range", CaseValueKind.Quantity, "\"2000 rpm\"", "Largest speed of either sign that is read; beyond it the reading stays")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>sensors.bits</c>: bits of the converter over every range that is given, from minus to plus the range.</summary>
    public static readonly CaseKey SensorsBits =
        new("sensors.bits", CaseValueKind.Count, "12", "Bits of the converter over every range that is given, from minus to plus the range")
        { Range = CaseRange.Counts(4, 24) };

    /// <summary><c>sensors.filter-time</c>: time constant of the first-order filter before the converter.</summary>
    public static readonly CaseKey SensorsFilterTime =
        new("sensors.filter-time", CaseValueKind.Quantity, "\"2 ms\"", "Time constant of the first-order filter before the converter")
        { Range = CaseRange.From0(Dimension.Time, "10 s"), DefaultText = "0 ms" };

    /// <summary><c>sensors.seed</c>: number from which all noise follows.</summary>
    public static readonly CaseKey SensorsSeed =
        new("sensors.seed", CaseValueKind.Count, "7", "Number from which all noise follows")
        { Range = CaseRange.Counts(0, 1000000000), DefaultText = "1" };

    /// <summary><c>sensors.pulses-per-revolution</c>: pulses of the speed pick-up in one revolution; when left out, the speed is measured continuously.</summary>
    public static readonly CaseKey SensorsPulsesPerRevolution =
        new("sensors.pulses-per-revolution", CaseValueKind.Count, "60", "Pulses of the speed pick-up in one revolution; when left out, the speed is measured continuously")
        { Range = CaseRange.Counts(1, 100000) };

    /// <summary><c>sensors.pulse-timeout</c>: time without a pulse after which the speed is unknown.</summary>
    public static readonly CaseKey SensorsPulseTimeout =
        new("sensors.pulse-timeout", CaseValueKind.Quantity, "\"100 ms\"", "Time without a pulse after which the speed is unknown")
        { Range = CaseRange.Above0(Dimension.Time, "1000 s"), DefaultText = "100 ms" };

    /// <summary><c>event.missing-pulses</c>: part of the pick-up's pulses that is lost, from then on.</summary>
    public static readonly CaseKey EventMissingPulses =
        new("event.missing-pulses", CaseValueKind.Ratio, "0.1", "Part of the pick-up's pulses that is lost, from then on")
        { Range = new CaseRange(0, true, 1, true, "0 to 1") };

    /// <summary><c>event.extra-pulses</c>: pulses that come on top, as a part of the pick-up's own, from then on.</summary>
    public static readonly CaseKey EventExtraPulses =
        new("event.extra-pulses", CaseValueKind.Ratio, "0.1", "Pulses that come on top, as a part of the pick-up's own, from then on")
        { Range = new CaseRange(0, true, 10, true, "0 to 10") };

    /// <summary><c>event.sensor</c>: the sensor that a sensor fault is about.</summary>
    public static readonly CaseKey EventSensor =
        new("event.sensor", CaseValueKind.Choice, "\"armature current\"", "Analogue sensor that event.sensor-fault is about")
        { Choices = ["supply volts", "armature current", "field current", "resistor temperature"] };

    /// <summary><c>event.sensor-fault</c>: what is wrong with that sensor.</summary>
    public static readonly CaseKey EventSensorFault =
        new("event.sensor-fault", CaseValueKind.Choice, "\"open wire\"", "State of the sensor event.sensor, from then on: its last reading for ever, or the lowest of its range with an open wire, 0 where no range is given")
        { Choices = ["stuck", "open wire", "sound"] };
}
