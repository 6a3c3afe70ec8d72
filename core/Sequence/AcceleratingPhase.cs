namespace StarterCtl.Core;

/// <summary>Presets stages for a turning shaft, closes the line, and cuts the resistance out stage by stage.</summary>
public sealed class AcceleratingPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly CurrentProof _current;
    private readonly PeakLaw _law;
    private readonly ContactWait _waits;
    private readonly SupplyDip _dip;
    private readonly RunningPhase _running;
    private readonly MotionWatch _motion;
    private readonly EventLog _log;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public AcceleratingPhase(
        Settings settings, Sequence sequence, ContactProof contacts, CurrentProof current, PeakLaw law, ContactWait waits,
        SupplyDip dip, RunningPhase running, MotionWatch motion, EventLog log, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _contacts = contacts;
        _current = current;
        _law = law;
        _waits = waits;
        _dip = dip;
        _running = running;
        _motion = motion;
        _log = log;
        _why = why;
    }

    /// <summary>One decision: at most one stage.</summary>
    public void Step(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        _sequence.InPhaseMicroseconds = Elapsed.Add(_sequence.InPhaseMicroseconds, elapsedMicroseconds);
        if (_sequence.WantLine && _contacts.LineCommanded)
        {
            Accelerate(elapsedMicroseconds, readings, estimate);
        }
        else
        {
            // A wish that the interlock refused is forgotten: a line contact that closes without its coil proves nothing.
            _sequence.WantLine = false;
            Preset(readings, estimate);
        }

        // Last, because what held the start up says more than the time that ran out.
        if (_sequence.Phase != Phase.Accelerating || _sequence.InPhaseMicroseconds < _settings.MaximumStartMicroseconds) return;
        _sequence.Trip(FaultId.SequenceIncomplete, _sequence.Stage, _settings.MaximumStartMicroseconds * 0.000001f);
    }

    /// <summary>
    /// Into a turning shaft the line closes on the first stage whose resistance keeps the current within the peak: the stages
    /// before it are closed first, in order and each proven, and opened again when the shaft has become too slow for them.
    /// </summary>
    private void Preset(Readings readings, Estimate estimate)
    {
        bool isBackwards = estimate.SpeedKnown && readings.SpeedRadPerSec < -_settings.StandstillRadPerSec;
        bool turns = estimate.SpeedKnown && readings.SpeedRadPerSec > _settings.StandstillRadPerSec;
        bool isUnfit = isBackwards || (turns && !_settings.SpinningStart) || !_law.IsFirstCeilingKept;
        int stages = turns && !isUnfit ? _law.StagesToPreset() : 0;
        int wanted = StageBits.UpTo(stages);
        _sequence.WantStages &= wanted & _contacts.StagesCommanded;

        // A coil that is still on for a stage no longer wanted may close it yet.
        if (_contacts.StagesClosed != _sequence.WantStages || _contacts.FirstDisagreeingStage != 0)
        {
            int beside = _contacts.FirstStageBeside(_sequence.WantStages);
            _why.Set(Reason.PresettingStages, beside != 0 ? beside : _contacts.FirstDisagreeingStage, stages, _contacts.StagesMicrosecondsLeft);
        }
        else if (isUnfit)
        {
            _why.Set(Reason.WaitingForShaft, estimate.DecidingVolts, isBackwards ? 0f : _law.FirstCeilingVolts, 0);
        }
        else if (_contacts.LineCommanded || _contacts.LineClosed || _contacts.BrakeClosed)
        {
            _why.Set(Reason.WaitingForContactsToOpen, 0f, 0f, _contacts.LineClosed ? _contacts.LineMicrosecondsLeft : _contacts.BrakeMicrosecondsLeft);
        }
        else if (_dip.IsOn)
        {
            // What the dip permits would pass the peak when the supply returns.
            _dip.Explain(readings);
        }
        else if (_sequence.WantStages != wanted)
        {
            int stage = StageBits.Run(_sequence.WantStages) + 1;
            _sequence.WantStages |= StageBits.Of(stage);
            _why.Set(Reason.PresettingStages, stage, stages, _settings.ContactMicroseconds);
        }
        else
        {
            _sequence.BeginStage(stages + 1);
            _sequence.WantLine = true;
            _why.Set(Reason.WaitingForLineContact, 0f, 0f, _settings.ContactMicroseconds);
        }
    }

    private void Accelerate(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        bool areProven = _waits.IsOver;
        if (!areProven && !GoesOnUnproven(readings, estimate)) return;

        if (_sequence.LineProven) _sequence.InStageMicroseconds = Elapsed.Add(_sequence.InStageMicroseconds, elapsedMicroseconds);
        _sequence.LineProven = true;
        if (_sequence.InStageMicroseconds >= _settings.MaximumStageMicroseconds)
        {
            _sequence.Trip(FaultId.StageTookTooLong, _sequence.Stage, _settings.MaximumStageMicroseconds * 0.000001f);
            return;
        }

        if (_dip.IsOn && _dip.PutBack(readings)) areProven = _waits.IsOver;
        if (!areProven || _current.IsPending) WaitForProof(readings);
        else if ((_sequence.WantStages & _sequence.StageBit) != 0 || _sequence.Stage > _settings.StageCount) EnterNextStage(elapsedMicroseconds, readings, estimate);
        else DecideCutout(elapsedMicroseconds, readings, estimate);
    }

    // With a contact that is not where its coil wants it: false when there is nothing more to decide on this tick.
    private bool GoesOnUnproven(Readings readings, Estimate estimate)
    {
        if (_waits.TripOnStrayContact()) return false;
        if (_contacts.LineClosed) return true;
        bool isTooSlow = !_sequence.LineProven && _sequence.Stage > 1 && !_law.IsKept(_sequence.Stage - 1);
        if (isTooSlow)
        {
            // The shaft has slowed down before the line was in.
            _sequence.WantLine = false;
            Preset(readings, estimate);
            return false;
        }

        _waits.Wait();
        return false;
    }

    private void WaitForProof(Readings readings)
    {
        _waits.Wait();
        if (_sequence.Phase == Phase.Accelerating && _current.IsLooking) _why.Set(Reason.ProvingByCurrent, readings.ArmatureAmps, _current.ExpectedAmps, _current.MicrosecondsLeft);
    }

    private void EnterNextStage(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        if (_sequence.Stage <= _settings.StageCount) _sequence.BeginStage(_sequence.Stage + 1);
        if (_sequence.Stage <= _settings.StageCount)
        {
            DecideCutout(elapsedMicroseconds, readings, estimate);
            return;
        }

        _sequence.GoTo(Phase.Running);
        _running.Explain(readings, estimate);
    }

    private void DecideCutout(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        int stage = _sequence.Stage;
        int confirmedMicroseconds = _sequence.ConfirmedMicroseconds;
        _sequence.ConfirmedMicroseconds = -1;
        if (_dip.IsOn)
        {
            _dip.Explain(readings);
            return;
        }

        if (!_law.IsKept(stage))
        {
            ExplainPeak(stage, estimate);
            return;
        }

        float backEmfVolts = estimate.DecidingVolts;
        float thresholdVolts = _law.ThresholdVolts(stage);
        if (!(readings.ArmatureAmps >= -_settings.LockoutAmps && readings.ArmatureAmps <= _settings.LockoutAmps))
        {
            _why.Set(Reason.CurrentAboveLockout, readings.ArmatureAmps, _settings.LockoutAmps, 0);
            return;
        }

        if (_sequence.InStageMicroseconds < _settings.MinimumDwellMicroseconds)
        {
            _why.Set(Reason.MinimumDwell, backEmfVolts, thresholdVolts, _settings.MinimumDwellMicroseconds - _sequence.InStageMicroseconds);
            return;
        }

        int confirm = estimate.SpeedKnown ? _settings.ConfirmMicroseconds : _settings.ResistiveConfirmMicroseconds;
        _sequence.ConfirmedMicroseconds = confirmedMicroseconds >= 0 ? Elapsed.Add(confirmedMicroseconds, elapsedMicroseconds) : 0;
        if (_sequence.ConfirmedMicroseconds < confirm)
        {
            _why.Set(Reason.Confirming, backEmfVolts, thresholdVolts, confirm - _sequence.ConfirmedMicroseconds);
            return;
        }

        _sequence.WantStages |= _sequence.StageBit;
        _log.Add(EventKind.Cutout, stage, backEmfVolts);
        _why.Set(Reason.StageCutOut, backEmfVolts, thresholdVolts, 0);
    }

    private void ExplainPeak(int stage, Estimate estimate)
    {
        if (!estimate.DecidingValid) _why.Set(Reason.SpeedUnknown, 0f, 0f, _settings.SpeedSensorFitted ? _motion.SpeedMicrosecondsLeft : 0);
        else if (estimate.DecidingVolts > _law.CeilingVolts(stage)) _why.Set(Reason.BackEmfAboveSupply, estimate.DecidingVolts, _law.CeilingVolts(stage), 0);
        else _why.Set(Reason.BackEmfBelowThreshold, estimate.DecidingVolts, _law.ThresholdVolts(stage), 0);
    }
}
