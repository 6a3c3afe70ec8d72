using StarterCtl.Core;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>What stands between the machine and the controller's readings: sensors and permissive inputs, sound or not.</summary>
internal sealed class SensorPanel(double resistorCelsius)
{
    private const int EveryPermissive = -1;

    private SpeedSignalState _speedSignal;
    private double _currentGain = 1;
    private double _resistorCelsius = resistorCelsius;
    private int _permissives = EveryPermissive;
    private bool _isShown;

    /// <summary>Lets signals go wrong, or sound again.</summary>
    public void Obey(RunEvent happening)
    {
        _speedSignal = happening.SpeedSignal ?? _speedSignal;
        _currentGain = happening.CurrentSensorGain ?? _currentGain;
        _resistorCelsius = happening.ResistorCelsius ?? _resistorCelsius;
        _permissives = happening.Permissives ?? _permissives;
        _isShown = false;
    }

    /// <summary>Reads the machine into the readings, which keep what has not changed.</summary>
    public void Show(PlantSolver plant, Readings readings)
    {
        readings.SupplyVolts = (float)plant.TerminalVolts;
        readings.ArmatureAmps = (float)(_currentGain * plant.ArmatureAmps);
        readings.FieldAmps = (float)plant.FieldAmps;

        // A lost or stuck signal leaves the last speed in place.
        if (_speedSignal == SpeedSignalState.Sound) readings.SpeedRadPerSec = (float)plant.SpeedRadPerSec;
        else if (_speedSignal == SpeedSignalState.Zero) readings.SpeedRadPerSec = 0f;
        if (_isShown) return;
        _isShown = true;
        readings.SpeedValid = _speedSignal != SpeedSignalState.Lost;
        readings.ResistorCelsius = (float)_resistorCelsius;
        readings.Permissives = _permissives;
    }
}
