using StarterCtl.Core;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>What stands between the machine and the controller's readings: sensors and permissive inputs, sound or not.</summary>
internal sealed class SensorPanel(RunSetup setup)
{
    private const int EveryPermissive = -1;

    // Null where sensors are ideal, which costs nothing.
    private readonly SensorSet? _real = setup.Sensors == null ? null : new SensorSet(setup.Sensors, setup.PeriodMicroseconds * 1e-6);
    private readonly bool _hasField = setup.Field != null;
    private SpeedSignalState _speedSignal;
    private double _currentGain = 1;
    private readonly SensorWires _wires = new(setup.Sensors);
    private double _resistorCelsius = setup.Heat is { Sections.Count: > 0 } heat ? heat.AmbientCelsius : setup.ResistorCelsius;
    private bool _isResistorGiven;
    private int _permissives = EveryPermissive;
    private bool _isIdeal = setup.Sensors == null;
    private bool _isShown;

    /// <summary>Lets signals go wrong, or sound again.</summary>
    /// <param name="happening">The event.</param>
    /// <param name="readings">The last readings, at which a sensor may be stuck.</param>
    public void Obey(RunEvent happening, Readings readings)
    {
        _speedSignal = happening.SpeedSignal ?? _speedSignal;
        _currentGain = happening.CurrentSensorGain ?? _currentGain;
        if (happening.ResistorCelsius is double celsius)
        {
            _resistorCelsius = celsius;
            _isResistorGiven = true;
        }

        if (happening.SensorFault is SensorFault fault) _wires.Obey(fault, readings);
        _permissives = happening.Permissives ?? _permissives;
        _real?.Obey(happening);
        _isIdeal = _real == null && _currentGain == 1 && _speedSignal == SpeedSignalState.Sound && !_wires.AreBroken;
        _isShown = false;
    }

    /// <summary>Lets the resistor's sensor follow the hottest section, unless an event has said what it reads.</summary>
    /// <param name="celsius">Its temperature, degC; NaN: the sections do not warm up.</param>
    public void Feel(double celsius)
    {
        if (_isResistorGiven || double.IsNaN(celsius)) return;
        _resistorCelsius = celsius;
        _isShown = false;
    }

    /// <summary>Reads the machine into the readings, which keep what has not changed.</summary>
    public void Show(PlantSolver plant, Readings readings, double now)
    {
        if (_hasField) readings.FieldAmps = (float)plant.FieldAmps;
        if (!_isIdeal)
        {
            ShowThroughSensors(plant, readings, now);
            return;
        }

        readings.SupplyVolts = (float)plant.TerminalVolts;
        readings.ArmatureAmps = (float)plant.ArmatureAmps;
        readings.SpeedRadPerSec = (float)plant.SpeedRadPerSec;
        if (_isShown) return;
        _isShown = true;
        readings.SpeedValid = true;
        ShowTheRest(readings);
    }

    private void ShowThroughSensors(PlantSolver plant, Readings readings, double now)
    {
        double speed = plant.SpeedRadPerSec, amps = _currentGain * plant.ArmatureAmps, volts = plant.TerminalVolts;
        bool isSpeedKnown = _real == null || _real.Read(now, ref volts, ref amps, ref speed);
        readings.SupplyVolts = (float)volts;
        readings.ArmatureAmps = (float)amps;
        // A lost or stuck signal leaves the last speed in place.
        if (_speedSignal == SpeedSignalState.Sound) readings.SpeedRadPerSec = (float)speed;
        else if (_speedSignal == SpeedSignalState.Zero) readings.SpeedRadPerSec = 0f;
        readings.SpeedValid = _speedSignal == SpeedSignalState.Sound ? isSpeedKnown : _speedSignal != SpeedSignalState.Lost;
        ShowTheRest(readings);
        if (_wires.AreBroken) _wires.Show(readings);
    }

    private void ShowTheRest(Readings readings)
    {
        readings.ResistorCelsius = (float)_resistorCelsius;
        readings.Permissives = _permissives;
    }
}
