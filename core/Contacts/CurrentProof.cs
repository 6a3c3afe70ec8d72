namespace StarterCtl.Core;

/// <summary>
/// Proves a closing by what the current does. Across a cutout the back-EMF hardly changes, so the current steps by the ratio of
/// the resistances; behind the step it must be what supply, back-EMF and the designed resistance make. At the first closing
/// it tells whether the resistance is really in. Another current names the contact whose failure explains it.
/// </summary>
public sealed class CurrentProof
{
    private readonly Settings _settings;
    private readonly bool _judges;
    private bool _wasLineCommanded;
    private int _wereStagesCommanded;
    private bool _isWatching;
    private bool _isStage;
    private int _stage;
    private bool _isSettling;
    private int _microseconds;
    private int _settledMicroseconds;
    private float _beforeAmps;
    private float _beforeVolts;
    private float _backEmfVolts;
    private float _lastAmps;
    private float _lastVolts;
    private float _mostAmps;
    private float _mostVolts;
    private float _unchangedAmps;

    /// <summary>What the current showed on this tick, or <see cref="FaultId.None"/>.</summary>
    public FaultId Fault;

    /// <summary>The contact that it names, or the current seen.</summary>
    public float FaultValue;

    /// <summary>The current expected where a section has drifted, else 0.</summary>
    public float FaultLimit;

    /// <summary>Current expected with the closing contact in, A.</summary>
    public float ExpectedAmps;

    /// <summary>True once the line contact was seen in by its current, or nothing can be seen; only while commanded.</summary>
    public bool IsLineSeen;

    /// <summary>Builds the proof on checked settings.</summary>
    public CurrentProof(Settings settings)
    {
        _settings = settings;
        _judges = settings.StepToleranceRatio > 0f;
        IsUsed = _judges || !settings.LineContactFitted;
    }

    /// <summary>True if the settings ask for it.</summary>
    public readonly bool IsUsed;

    /// <summary>True while a closing is not judged yet: no cutout meanwhile.</summary>
    public bool IsPending => _isWatching;

    /// <summary>True while it is the current that is waited for, and no auxiliary contact.</summary>
    public bool IsLooking => _isWatching && (_isSettling || !AwaitsAuxiliary);

    /// <summary>Coil bit of the stage whose closing is not proven yet; 0 when there is none.</summary>
    public int UnprovenStage => _isWatching && _isStage ? StageBits.Of(_stage) : 0;

    /// <summary>True while a stage's closing has been seen and its current is not judged yet.</summary>
    public bool HasSeenStage => _isWatching && _isStage && _isSettling;

    /// <summary>Time left until a closing that shows nothing counts as failed, microseconds.</summary>
    public int MicrosecondsLeft => _settings.ContactMicroseconds + _settings.StepSettleMicroseconds - _microseconds;

    /// <summary>Looks at the current.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="estimate">Estimates of this tick.</param>
    /// <param name="coils">The interlock, with the coils as the last tick left them.</param>
    public void Update(int elapsedMicroseconds, Readings readings, Estimate estimate, Interlock coils)
    {
        Fault = FaultId.None;
        int added = coils.StagesCommanded & ~_wereStagesCommanded;
        if (!coils.LineCommanded) Forget();
        else if (!_wasLineCommanded) Watch(false, StageBits.Run(coils.StagesCommanded));
        else if (added != 0 && _judges) Watch(true, StageBits.Run(coils.StagesCommanded));
        else if (_isWatching && _isStage && StageBits.Run(coils.StagesCommanded) < _stage) _isWatching = false;
        _wasLineCommanded = coils.LineCommanded;
        _wereStagesCommanded = coils.StagesCommanded;
        if (_isWatching) Look(elapsedMicroseconds, readings, estimate);
        _lastAmps = readings.ArmatureAmps;
        _lastVolts = readings.SupplyVolts;
    }

    private void Forget()
    {
        _isWatching = false;
        IsLineSeen = false;
    }

    // A contact may have closed since the coil was switched: what was read on that tick is still from before.
    private void Watch(bool isStage, int stage)
    {
        _isWatching = true;
        _isStage = isStage;
        _stage = stage;
        _isSettling = false;
        _microseconds = 0;
        _settledMicroseconds = 0;
        _beforeAmps = 0f;
        _beforeVolts = 0f;
        _backEmfVolts = 0f;
        _mostAmps = 0f;
        if (isStage) TakeBefore(_lastAmps, _lastVolts, BackEmfBefore(_lastAmps, _lastVolts));
    }

    private void Look(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        _microseconds = Elapsed.Add(_microseconds, elapsedMicroseconds);
        if (_isSettling) _settledMicroseconds = Elapsed.Add(_settledMicroseconds, elapsedMicroseconds);
        else if (_isStage) KeepLastBefore(readings);
        Expect(readings.SupplyVolts, estimate);
        if (!_isSettling && IsClosingSeen(readings))
        {
            _isSettling = true;
            if (!_isStage) IsLineSeen = true;
        }

        if (_isSettling) KeepMost(readings);
        if (_isSettling && _settledMicroseconds >= _settings.StepSettleMicroseconds)
        {
            _isWatching = false;
            if (_judges) Judge(readings, estimate);
        }
        else if (!_isSettling && _microseconds >= _settings.ContactMicroseconds && !AwaitsAuxiliary)
        {
            // Nothing was seen. Where nothing could be seen, the closing has to be taken on trust.
            _isWatching = false;
            if (IsVisible && _isStage) Explain(readings.ArmatureAmps, readings.SupplyVolts, estimate);
            else if (IsVisible) Find(FaultId.ContactDidNotClose, ContactNumber.Line, 0f);
            else if (!_isStage) IsLineSeen = true;
        }
    }

    private void Expect(float supplyVolts, Estimate estimate)
    {
        ExpectedAmps = AmpsThrough(_settings.StageOhms[_stage], supplyVolts, BackEmf(estimate, 0f));
        if (_isStage) _unchangedAmps = _beforeAmps + (supplyVolts - _beforeVolts) / _settings.StageOhms[_stage - 1];
    }

    private bool AwaitsAuxiliary => _isStage ? _settings.StageContactsFitted : _settings.LineContactFitted;

    // Until the contact closes the back-EMF comes nearer to the supply, and the step looks like the opposite: the last one
    // before the step counts, whatever the supply does meanwhile.
    private void KeepLastBefore(Readings readings)
    {
        float backEmfVolts = BackEmfBefore(readings.ArmatureAmps, readings.SupplyVolts);
        bool isNearer = readings.ArmatureAmps >= 0f ? backEmfVolts >= _backEmfVolts : backEmfVolts <= _backEmfVolts;
        if (isNearer) TakeBefore(readings.ArmatureAmps, readings.SupplyVolts, backEmfVolts);
    }

    private void TakeBefore(float amps, float volts, float backEmfVolts)
    {
        _beforeAmps = amps;
        _beforeVolts = volts;
        _backEmfVolts = backEmfVolts;
    }

    private float BackEmfBefore(float amps, float volts) =>
        volts - (amps >= 0f ? _settings.BrushDropVolts : -_settings.BrushDropVolts) - amps * _settings.StageOhms[_stage - 1];

    // Behind the step too the back-EMF rises: the most that flowed is nearest to what the resistance let through.
    private void KeepMost(Readings readings)
    {
        if (Magnitude.Of(readings.ArmatureAmps) < Magnitude.Of(_mostAmps)) return;
        _mostAmps = readings.ArmatureAmps;
        _mostVolts = readings.SupplyVolts;
    }

    private bool IsClosingSeen(Readings readings)
    {
        if (!_isStage) return _settings.LineContactFitted ? readings.LineClosed : !IsZero(readings.ArmatureAmps);
        if (_settings.StageContactsFitted) return (readings.StagesClosed & StageBits.Of(_stage)) != 0;
        float halfwayAmps = (_unchangedAmps + ExpectedAmps) * 0.5f;
        return IsVisible && Magnitude.Of(readings.ArmatureAmps) >= Magnitude.Of(halfwayAmps);
    }

    private void Judge(Readings readings, Estimate estimate)
    {
        float amps = estimate.SpeedKnown ? readings.ArmatureAmps : _mostAmps;
        float volts = estimate.SpeedKnown ? readings.SupplyVolts : _mostVolts;
        Expect(volts, estimate);
        if (!IsVisible || IsNear(amps, ExpectedAmps, estimate)) return;

        // Without any current the voltage equation would take a dead circuit for a machine at full speed.
        if (!_isStage && IsZero(amps))
        {
            Find(FaultId.ContactDidNotClose, ContactNumber.Line, 0f);
            return;
        }

        // At a start with an unknown speed the shaft may turn already: only too much current speaks then.
        bool isBelow = Magnitude.Of(amps) < Magnitude.Of(ExpectedAmps);
        if (!_isStage && !estimate.SpeedKnown && isBelow) return;
        Explain(amps, volts, estimate);
    }

    // It is not the designed resistance: the nearest explanation by a single contact that failed counts.
    private void Explain(float amps, float volts, Estimate estimate)
    {
        // The likeliest one first: no step at all.
        if (_isStage && IsNear(amps, AmpsThrough(_settings.StageOhms[_stage - 1], volts, BackEmf(estimate, 0f)), estimate))
        {
            Find(FaultId.ContactDidNotClose, _stage, 0f);
            return;
        }

        int nearest = 0;
        float nearestAmps = 0f;
        for (int stage = 1; stage <= _settings.StageCount; stage++)
        {
            float sectionOhms = _settings.StageOhms[stage - 1] - _settings.StageOhms[stage];
            float moreOhms = stage <= _stage ? sectionOhms : -sectionOhms;
            float ohms = _settings.StageOhms[_stage] + moreOhms;
            // Rounding may leave nothing of a small rest.
            if (!(ohms > 0f)) continue;
            // Another contact than the one that closes had failed before.
            float otherAmps = AmpsThrough(ohms, volts, BackEmf(estimate, stage == _stage ? 0f : moreOhms));
            if (nearest != 0 && Magnitude.Of(amps - otherAmps) >= Magnitude.Of(amps - nearestAmps)) continue;
            nearest = stage;
            nearestAmps = otherAmps;
        }

        if (!IsNear(amps, nearestAmps, estimate)) Find(FaultId.SectionDrifted, amps, ExpectedAmps);
        else Find(nearest <= _stage ? FaultId.ContactDidNotClose : FaultId.ContactDidNotOpen, nearest, 0f);
    }

    // With the speed known the back-EMF is that of now; else that of just before the closing, of a circuit with so much more.
    private float BackEmf(Estimate estimate, float moreOhmsBefore) =>
        estimate.SpeedKnown ? estimate.BackEmfVolts : _backEmfVolts - _beforeAmps * moreOhmsBefore;

    private float AmpsThrough(float ohms, float supplyVolts, float backEmfVolts)
    {
        float volts = supplyVolts - backEmfVolts;
        if (volts > _settings.BrushDropVolts) return (volts - _settings.BrushDropVolts) / ohms;
        return volts < -_settings.BrushDropVolts ? (volts + _settings.BrushDropVolts) / ohms : 0f;
    }

    // A current within twice the sensor's own zero error says nothing. Half of a step must be larger than the errors of the
    // readings before and behind it together: noise must not pass for a closing.
    private bool IsVisible =>
        Magnitude.Of(ExpectedAmps) > 2f * _settings.ZeroAmps
        && (!_isStage || Magnitude.Of(ExpectedAmps - _unchangedAmps) > 4f * _settings.ZeroAmps);

    // Where the back-EMF comes from the current before the step, that one's error counts too, larger by the step.
    private bool IsNear(float amps, float expectedAmps, Estimate estimate)
    {
        float zeroAmps = _settings.ZeroAmps;
        if (_isStage && !estimate.SpeedKnown) zeroAmps += zeroAmps * _settings.StageOhms[_stage - 1] / _settings.StageOhms[_stage];
        return Magnitude.Of(amps - expectedAmps) <= _settings.StepToleranceRatio * Magnitude.Of(expectedAmps) + zeroAmps;
    }

    private bool IsZero(float amps) => Magnitude.Of(amps) <= _settings.ZeroAmps;

    private void Find(FaultId id, float measured, float limit)
    {
        Fault = id;
        FaultValue = measured;
        FaultLimit = limit;
    }
}
