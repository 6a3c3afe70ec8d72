using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>The analogue sensors on the desk: what the case's sensors make of volts, amperes, degrees and a tacho's speed goes to the board's converters as counts.</summary>
internal sealed class DeskSensors
{
    // The board pulls an input that nothing drives down to 0 V.
    private const int OpenWireCounts = 0;

    private readonly DeskPins _pins;
    private readonly DeskChannel[] _channels;
    private readonly AnalogSensor _volts;
    private readonly AnalogSensor _amps;
    private readonly AnalogSensor _speed;
    private readonly DeskChannel _tacho;
    private double _currentGain = 1;
    private double _resistorCelsius;
    private SpeedSignalState _speedSignal;

    public DeskSensors(PinMap map, DeskPins pins, RunSetup setup)
    {
        SensorModel model = setup.Sensors ?? new SensorModel();
        _pins = pins;
        _volts = new AnalogSensor(model.Voltage, model, 0, setup.PeriodMicroseconds * 1e-6);
        _amps = new AnalogSensor(model.Current, model, 1, setup.PeriodMicroseconds * 1e-6);
        _speed = new AnalogSensor(model.Speed, model, 2, setup.PeriodMicroseconds * 1e-6);
        _tacho = new DeskChannel(PinRole.TachoRadPerSec, map.Tacho);
        _resistorCelsius = setup.Heat?.AmbientCelsius ?? setup.ResistorCelsius;
        // In the order of SensorName.
        _channels =
        [
            new DeskChannel(PinRole.SupplyVolts, map.Supply), new DeskChannel(PinRole.ArmatureAmps, map.Armature),
            new DeskChannel(PinRole.FieldAmps, map.Field), new DeskChannel(PinRole.ResistorCelsius, map.Resistor),
        ];
    }

    /// <summary>Lets a sensor go wrong, or sound again.</summary>
    public void Obey(RunEvent happening)
    {
        _currentGain = happening.CurrentSensorGain ?? _currentGain;
        _resistorCelsius = happening.ResistorCelsius ?? _resistorCelsius;
        if (happening.SpeedSignal is SpeedSignalState signal)
        {
            _speedSignal = signal;
            _tacho.Fault = signal == SpeedSignalState.Lost ? SensorFaultKind.OpenWire : signal == SpeedSignalState.Stuck ? SensorFaultKind.Stuck : SensorFaultKind.Sound;
        }

        if (happening.SensorFault is SensorFault fault) _channels[(int)fault.Sensor].Fault = fault.Kind;
    }

    /// <summary>Puts everything on the pins, once in each control period.</summary>
    public void Show(PlantSolver plant)
    {
        Show(_tacho, _speedSignal == SpeedSignalState.Zero ? 0 : _speed.Read(plant.SpeedRadPerSec));
        Show(_channels[(int)SensorName.SupplyVolts], _volts.Read(plant.TerminalVolts));
        Show(_channels[(int)SensorName.ArmatureAmps], _amps.Read(_currentGain * plant.ArmatureAmps));
        Show(_channels[(int)SensorName.FieldAmps], plant.FieldAmps);
        Show(_channels[(int)SensorName.ResistorCelsius], _resistorCelsius);
    }

    private void Show(DeskChannel channel, double quantity)
    {
        if (channel.Fault == SensorFaultKind.OpenWire) _pins.ShowCounts(channel.Role, OpenWireCounts);
        else if (channel.Fault == SensorFaultKind.Sound) _pins.Show(channel.Role, channel.Nominal, quantity);
    }

    // The nominal pair is the sensor's own: calibrating the board does not change the sensor.
    private sealed class DeskChannel(PinRole role, AnalogSetup setup)
    {
        public PinRole Role => role;

        public ChannelCalibration Nominal { get; } = new() { OffsetCounts = setup.Calibration.OffsetCounts, UnitsPerCount = setup.Calibration.UnitsPerCount };

        public SensorFaultKind Fault { get; set; }
    }
}
