namespace StarterCtl.Core;

/// <summary>
/// The one rule of every cutout: the current right after the cutout of a stage is (V - Vb - E) / R_next, so it stays within the
/// permitted peak exactly while V - Vb - E is at most the volts left that belong to the stage, and E - V - Vb at most the same
/// for a current back.
/// </summary>
public sealed class PeakLaw
{
    private readonly Settings _settings;
    private readonly Estimate _estimate;
    private readonly float[] _voltsLeft;
    private float _supplyVolts;

    /// <summary>Builds the rule on checked settings.</summary>
    /// <param name="settings">Volts left and brush drop.</param>
    /// <param name="estimate">The estimates that it looks at.</param>
    public PeakLaw(Settings settings, Estimate estimate)
    {
        _settings = settings;
        _voltsLeft = settings.VoltsLeft;
        _estimate = estimate;
    }

    /// <summary>Takes this tick's supply over.</summary>
    public void Update(Readings readings) => _supplyVolts = readings.SupplyVolts;

    /// <summary>Back-EMF from which a stage may be cut out at the present supply, V.</summary>
    /// <param name="stage">1 to the stage count.</param>
    public float ThresholdVolts(int stage) => _supplyVolts - _settings.BrushDropVolts - _voltsLeft[stage - 1];

    /// <summary>Back-EMF up to which a stage may be cut out at the present supply, V.</summary>
    /// <param name="stage">1 to the stage count.</param>
    public float CeilingVolts(int stage) => _supplyVolts + _settings.BrushDropVolts + _voltsLeft[stage - 1];

    /// <summary>
    /// True while the current with a stage cut out stays within the peak. A threshold that is not above zero comes from a dead
    /// sensor or a supply that has gone, and keeps nothing.
    /// </summary>
    /// <param name="stage">1 to the stage count.</param>
    public bool IsKept(int stage)
    {
        float thresholdVolts = ThresholdVolts(stage);
        return _estimate.DecidingValid && thresholdVolts > 0f
            && _estimate.DecidingVolts >= thresholdVolts && _estimate.DecidingVolts <= CeilingVolts(stage);
    }

    /// <summary>
    /// The same by the speed alone: with a contact lost the voltage equation does not know what resistance is in.
    /// </summary>
    /// <param name="stage">1 to the stage count.</param>
    public bool IsKeptBySpeed(int stage) => _estimate.SpeedKnown && IsKept(stage);

    /// <summary>The same, now and when the supply comes back to its nominal value.</summary>
    /// <param name="stage">1 to the stage count.</param>
    public bool IsKeptOnReturn(int stage) =>
        _estimate.DecidingValid && _estimate.DecidingVolts <= CeilingVolts(stage)
        && _estimate.DecidingVolts >= _settings.NominalSupplyVolts - _settings.BrushDropVolts - _voltsLeft[stage - 1];

    /// <summary>How many stages may be closed before the line does, for the present back-EMF.</summary>
    /// <returns>0 to the stage count; each stage below is permitted too.</returns>
    public int StagesToPreset()
    {
        int stages = 0;
        while (stages < _settings.StageCount && IsKept(stages + 1)) stages++;
        return stages;
    }

    /// <summary>True if the whole resistance keeps the current back of a shaft that is driven too fast within the peak.</summary>
    public bool IsFirstCeilingKept => !_estimate.SpeedKnown || _estimate.DecidingVolts <= FirstCeilingVolts;

    /// <summary>Back-EMF up to which the line may close on the whole resistance, V.</summary>
    public float FirstCeilingVolts => _supplyVolts + _settings.BrushDropVolts + _settings.PeakAmps * _settings.StageOhms[0];
}
