namespace StarterCtl.Core;

/// <summary>Turns readings into the two back-EMF estimates.</summary>
public sealed class Estimator
{
    private readonly Settings _settings;
    private float _lastArmatureAmps;

    /// <summary>Builds an estimator on checked settings.</summary>
    /// <param name="settings">Settings whose check has passed.</param>
    public Estimator(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Updates both estimates.</summary>
    /// <param name="elapsedMicroseconds">Time since the last tick, 0 or more.</param>
    /// <param name="readings">Readings of this tick; NaN passes through and is caught by <see cref="Protector"/>.</param>
    /// <param name="stageIndex">Index of the stage in effect, 0 to the stage count.</param>
    /// <param name="estimate">Receives the result.</param>
    public void Update(int elapsedMicroseconds, Readings readings, int stageIndex, Estimate estimate)
    {
        float amps = readings.ArmatureAmps;
        float brushVolts = amps >= 0f ? _settings.BrushDropVolts : -_settings.BrushDropVolts;
        float change = amps - _lastArmatureAmps;
        if (change < 0f) change = -change;
        _lastArmatureAmps = amps;

        estimate.BackEmfVolts = _settings.MachineConstant * readings.SpeedRadPerSec;
        estimate.ResistiveBackEmfVolts = readings.SupplyVolts - brushVolts - amps * _settings.StageOhms[stageIndex];
        estimate.ResistiveValid = readings.LineClosed
            && change <= _settings.SteadyAmpsPerSec * (elapsedMicroseconds * 0.000001f);
    }
}
