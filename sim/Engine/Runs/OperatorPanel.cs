using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>Push buttons that are let go after a moment, and a stop chain that stays as it was left.</summary>
public sealed class OperatorPanel
{
    private const double PressSeconds = 0.1;

    private double _startReleasesAt = double.NegativeInfinity;
    private double _stopReleasesAt = double.NegativeInfinity;
    private double _resetReleasesAt = double.NegativeInfinity;
    private bool _emergencyStop;
    private bool _isAtRest;

    /// <summary>Does what the operator does.</summary>
    public void Obey(OperatorCommand command, double nowSeconds)
    {
        double releasesAt = nowSeconds + PressSeconds;
        switch (command)
        {
            case OperatorCommand.Start:
                _startReleasesAt = releasesAt;
                break;
            case OperatorCommand.Stop:
                _stopReleasesAt = releasesAt;
                break;
            case OperatorCommand.Reset:
                _resetReleasesAt = releasesAt;
                break;
            default:
                _emergencyStop = command == OperatorCommand.EmergencyStop;
                break;
        }

        _isAtRest = false;
    }

    /// <summary>Writes the inputs as they stand at a time, into readings that keep what has not changed.</summary>
    public void Show(double nowSeconds, Readings readings)
    {
        // With every button released and shown so, nothing changes until the operator does something.
        if (_isAtRest) return;
        _isAtRest = nowSeconds >= _startReleasesAt && nowSeconds >= _stopReleasesAt && nowSeconds >= _resetReleasesAt;
        readings.StartPressed = nowSeconds < _startReleasesAt;
        readings.StopPressed = nowSeconds < _stopReleasesAt;
        readings.ResetPressed = nowSeconds < _resetReleasesAt;
        readings.EmergencyStop = _emergencyStop;
    }
}
