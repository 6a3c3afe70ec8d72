namespace StarterCtl.Core;

/// <summary>Turns readings into the back-EMF estimates.</summary>
public sealed class Estimator
{
    private readonly Settings _settings;
    private readonly FluxModel _flux;
    private readonly ContactProof _contacts;
    private readonly bool _isFluxConstant;
    private float _lastArmatureAmps;

    /// <summary>Builds an estimator on checked settings.</summary>
    /// <param name="settings">Settings whose check has passed.</param>
    /// <param name="contacts">Says whether the line is seen closed.</param>
    public Estimator(Settings settings, ContactProof contacts)
    {
        _settings = settings;
        _flux = new FluxModel(settings);
        _contacts = contacts;
        _isFluxConstant = settings.FluxSource == FluxSource.Constant;
    }

    /// <summary>Updates every estimate.</summary>
    /// <param name="elapsedMicroseconds">Time since the last tick, 0 or more.</param>
    /// <param name="readings">Readings of this tick; NaN passes through and is caught by <see cref="Protector"/>.</param>
    /// <param name="stageIndex">Index of the stage in effect, 0 to the stage count.</param>
    /// <param name="estimate">Receives the result.</param>
    public void Update(int elapsedMicroseconds, Readings readings, int stageIndex, Estimate estimate)
    {
        float amps = readings.ArmatureAmps;
        float brushVolts = amps >= 0f ? _settings.BrushDropVolts : -_settings.BrushDropVolts;
        float change = Magnitude.Of(amps - _lastArmatureAmps);
        _lastArmatureAmps = amps;

        float constant = _settings.MachineConstant;
        float atPeak = constant;
        if (!_isFluxConstant)
        {
            constant = _flux.Now(readings);
            atPeak = _flux.AtPeak(readings);
        }

        estimate.SpeedKnown = readings.SpeedValid && _settings.SpeedSensorFitted;
        estimate.BackEmfVolts = constant * readings.SpeedRadPerSec;
        estimate.ResistiveBackEmfVolts = readings.SupplyVolts - brushVolts - amps * _settings.StageOhms[stageIndex];
        estimate.ResistiveValid = _contacts.IsLineSeen(readings)
            && change <= _settings.SteadyAmpsPerSec * (elapsedMicroseconds * 0.000001f);

        if (estimate.SpeedKnown)
        {
            estimate.DecidingValid = true;
            estimate.DecidingVolts = atPeak * readings.SpeedRadPerSec;
        }
        else
        {
            // Without current the equation shows the supply and no back-EMF: an open circuit, or a sensor that is dead.
            bool flows = Magnitude.Of(amps) > _settings.ZeroAmps;
            estimate.DecidingValid = flows && estimate.ResistiveValid && _settings.SpeedLoss == SpeedLossAction.FinishStart && constant > 0f;
            // The voltage equation shows the back-EMF of the present flux.
            estimate.DecidingVolts = estimate.DecidingValid ? estimate.ResistiveBackEmfVolts * (atPeak / constant) : 0f;
        }
    }
}
