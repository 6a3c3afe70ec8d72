namespace StarterCtl.Core;

/// <summary>
/// The phases and the cutout decision. Says what it wants; <see cref="Interlock"/> decides what the coils get.
/// </summary>
public sealed class Sequencer
{
    private readonly Settings _settings;
    private readonly ContactProof _contacts;
    private readonly FaultLatch _faults;
    private readonly Explanation _why;
    private bool _lineProven;
    private int _inStageMicroseconds;
    private int _confirmedMicroseconds;
    // Held inputs count as pressed before the first tick: a button that is stuck at power-up starts and resets nothing.
    private bool _startWasPressed = true;
    private bool _resetWasPressed = true;

    /// <summary>Present phase.</summary>
    public Phase Phase;

    /// <summary>Stage in effect, 1 to the stage count; stage count + 1 once all resistance is out.</summary>
    public int Stage = 1;

    /// <summary>Line coil wanted.</summary>
    public bool WantLine;

    /// <summary>Stage coils wanted, bit 0 = stage 1.</summary>
    public int WantStages;

    /// <summary>Why a press of start would be refused on this tick; held to <see cref="Phase.Ready"/>.</summary>
    public Refusal Refusals;

    /// <summary>Builds the sequence on checked settings.</summary>
    public Sequencer(Settings settings, ContactProof contacts, FaultLatch faults, Explanation why)
    {
        _settings = settings;
        _contacts = contacts;
        _faults = faults;
        _why = why;
        Phase = Phase.Ready;
    }

    /// <summary>One decision: at most one phase change, at most one stage.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="estimate">Estimates of this tick.</param>
    /// <param name="causePresent">True while the cause of any fault is there.</param>
    public void Decide(int elapsedMicroseconds, Readings readings, Estimate estimate, bool causePresent)
    {
        bool startEdge = readings.StartPressed && !_startWasPressed;
        bool resetEdge = readings.ResetPressed && !_resetWasPressed;
        _startWasPressed = readings.StartPressed;
        _resetWasPressed = readings.ResetPressed;
        Refusals = Refusal.None;

        if (_faults.IsLatched && Phase != Phase.Tripped) Enter(Phase.Tripped);
        switch (Phase)
        {
            case Phase.Ready:
                WaitForStart(readings, startEdge);
                break;
            case Phase.Accelerating:
                if (readings.StopPressed) Stop(readings);
                else Accelerate(elapsedMicroseconds, readings, estimate);
                break;
            case Phase.Running:
                if (readings.StopPressed) Stop(readings);
                else if (IsLineToMeetStrayStage(readings)) TripOnStrayStage(readings);
                else if (!ContactsFollow(readings)) WaitForContacts(readings, estimate);
                else _why.Set(Reason.AllStagesCutOut, estimate.BackEmfVolts, readings.SupplyVolts - _settings.BrushDropVolts, 0);
                break;
            case Phase.Stopping:
                Stop(readings);
                break;
            default:
                WaitForReset(readings, resetEdge, causePresent);
                break;
        }
    }

    private void WaitForStart(Readings readings, bool startEdge)
    {
        if (readings.StopPressed) Refusals |= Refusal.StopPressed;
        if (readings.LineClosed) Refusals |= Refusal.LineNotOpen;
        if (readings.StagesClosed != 0) Refusals |= Refusal.StageNotOpen;
        if (readings.StartPressed && !startEdge) Refusals |= Refusal.StartHeld;

        if (!readings.StartPressed)
        {
            _why.Set(Reason.WaitingForStart, 0f, 0f, 0);
        }
        else if (Refusals != Refusal.None)
        {
            _why.Set(Reason.StartRefused, (int)Refusals, 0f, 0);
        }
        else
        {
            Enter(Phase.Accelerating);
            WantLine = true;
            _why.Set(Reason.WaitingForLineContact, 0f, 0f, _settings.ContactMicroseconds);
        }
    }

    private void Accelerate(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        if (IsLineToMeetStrayStage(readings))
        {
            TripOnStrayStage(readings);
            return;
        }

        if (!readings.LineClosed)
        {
            WaitForContacts(readings, estimate);
            return;
        }

        if (_lineProven) _inStageMicroseconds = Elapsed.Add(_inStageMicroseconds, elapsedMicroseconds);
        _lineProven = true;

        if (_inStageMicroseconds >= _settings.MaximumStageMicroseconds)
        {
            Trip(FaultId.StageTookTooLong, Stage, _settings.MaximumStageMicroseconds * 0.000001f);
            return;
        }

        if (readings.StagesClosed != WantStages)
        {
            WaitForContacts(readings, estimate);
            return;
        }

        if ((WantStages & (1 << (Stage - 1))) != 0) EnterNextStage();
        if (Phase == Phase.Running) _why.Set(Reason.AllStagesCutOut, estimate.BackEmfVolts, readings.SupplyVolts - _settings.BrushDropVolts, 0);
        else DecideCutout(elapsedMicroseconds, readings, estimate);
    }

    // A stage contact that nobody commanded, while the line is not in: it must not meet less resistance than the stage in effect.
    private bool IsLineToMeetStrayStage(Readings readings) =>
        (readings.StagesClosed & ~WantStages) != 0 && (!_lineProven || !readings.LineClosed);

    private void TripOnStrayStage(Readings readings) =>
        Trip(FaultId.ContactDidNotOpen, _contacts.FirstStrayStage(readings), 0f);

    private bool ContactsFollow(Readings readings) => readings.LineClosed && readings.StagesClosed == WantStages;

    /// <summary>
    /// A contact is not where its coil wants it. One that was proven closed and opened may close again by itself: it must then
    /// not meet so slow a shaft that the peak would be passed, whether the stage commanded last is proven closed yet or not.
    /// </summary>
    private void WaitForContacts(Readings readings, Estimate estimate)
    {
        int provenStages = (1 << (Stage - 1)) - 1;
        bool isLost = !readings.LineClosed || (readings.StagesClosed & provenStages) != provenStages;
        int lastStage = (WantStages & (1 << (Stage - 1))) != 0 ? Stage : Stage - 1;
        _confirmedMicroseconds = -1;
        if (isLost && lastStage > 0 && !IsPeakKept(lastStage, readings, estimate))
        {
            Trip(FaultId.ContactDidNotClose, readings.LineClosed ? _contacts.FirstDisagreeingStage(readings) : 0f, 0f);
        }
        else if (!readings.LineClosed)
        {
            _why.Set(Reason.WaitingForLineContact, 0f, 0f, _contacts.LineMicrosecondsLeft);
        }
        else
        {
            _why.Set(Reason.WaitingForStageContact, _contacts.FirstDisagreeingStage(readings), 0f, _contacts.StagesMicrosecondsLeft);
        }
    }

    private void Trip(FaultId id, float measured, float limit)
    {
        _faults.Raise(id, measured, limit, Phase, Stage);
        Enter(Phase.Tripped);
        _why.Set(Reason.FaultLatched, (int)id, 0f, 0);
    }

    private void EnterNextStage()
    {
        Stage++;
        _inStageMicroseconds = 0;
        _confirmedMicroseconds = -1;
        if (Stage > _settings.StageCount) Phase = Phase.Running;
    }

    /// <summary>
    /// The current right after the cutout of a stage is (V - Vb - E) / R_next, so it stays within the permitted peak exactly
    /// while V - Vb - E is at most the volts left that belong to the stage, and E - V - Vb at most the same for a current back.
    /// </summary>
    private bool IsPeakKept(int stage, Readings readings, Estimate estimate)
    {
        float backEmfVolts = estimate.BackEmfVolts;
        float thresholdVolts = ThresholdVolts(stage, readings);
        return thresholdVolts > 0f && backEmfVolts >= thresholdVolts && backEmfVolts <= CeilingVolts(stage, readings);
    }

    private float ThresholdVolts(int stage, Readings readings) =>
        readings.SupplyVolts - _settings.BrushDropVolts - _settings.VoltsLeft[stage - 1];

    private float CeilingVolts(int stage, Readings readings) =>
        readings.SupplyVolts + _settings.BrushDropVolts + _settings.VoltsLeft[stage - 1];

    private void DecideCutout(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        float thresholdVolts = ThresholdVolts(Stage, readings);
        int confirmedMicroseconds = _confirmedMicroseconds;
        bool held = confirmedMicroseconds >= 0;
        _confirmedMicroseconds = -1;

        if (!IsPeakKept(Stage, readings, estimate))
        {
            // A threshold that is not above zero comes from a dead sensor or a supply that has gone: it waits as well.
            float ceilingVolts = CeilingVolts(Stage, readings);
            if (estimate.BackEmfVolts > ceilingVolts) _why.Set(Reason.BackEmfAboveSupply, estimate.BackEmfVolts, ceilingVolts, 0);
            else _why.Set(Reason.BackEmfBelowThreshold, estimate.BackEmfVolts, thresholdVolts, 0);
            return;
        }

        if (!(readings.ArmatureAmps >= -_settings.LockoutAmps && readings.ArmatureAmps <= _settings.LockoutAmps))
        {
            _why.Set(Reason.CurrentAboveLockout, readings.ArmatureAmps, _settings.LockoutAmps, 0);
            return;
        }

        if (_inStageMicroseconds < _settings.MinimumDwellMicroseconds)
        {
            _why.Set(Reason.MinimumDwell, estimate.BackEmfVolts, thresholdVolts, _settings.MinimumDwellMicroseconds - _inStageMicroseconds);
            return;
        }

        _confirmedMicroseconds = held ? Elapsed.Add(confirmedMicroseconds, elapsedMicroseconds) : 0;
        if (_confirmedMicroseconds < _settings.ConfirmMicroseconds)
        {
            _why.Set(Reason.Confirming, estimate.BackEmfVolts, thresholdVolts, _settings.ConfirmMicroseconds - _confirmedMicroseconds);
            return;
        }

        WantStages |= 1 << (Stage - 1);
        _why.Set(Reason.StageCutOut, estimate.BackEmfVolts, thresholdVolts, 0);
    }

    private void Stop(Readings readings)
    {
        if (Phase != Phase.Stopping)
        {
            Enter(Phase.Stopping);
        }
        else if (!readings.LineClosed && readings.StagesClosed == 0)
        {
            EnterReady(readings);
            return;
        }

        int microsecondsLeft = readings.LineClosed ? _contacts.LineMicrosecondsLeft : _contacts.StagesMicrosecondsLeft;
        _why.Set(Reason.WaitingForContactsToOpen, 0f, 0f, microsecondsLeft);
    }

    private void WaitForReset(Readings readings, bool resetEdge, bool causePresent)
    {
        if (!resetEdge)
        {
            _why.Set(Reason.FaultLatched, (int)_faults.Id, 0f, 0);
        }
        else if (causePresent || readings.StartPressed)
        {
            _why.Set(Reason.ResetRefused, (int)_faults.Id, 0f, 0);
        }
        else
        {
            _faults.Clear();
            EnterReady(readings);
        }
    }

    // The press that may have been made on this tick was not made in Ready: it counts as held.
    private void EnterReady(Readings readings)
    {
        Enter(Phase.Ready);
        WaitForStart(readings, false);
    }

    private void Enter(Phase phase)
    {
        Phase = phase;
        Stage = 1;
        WantLine = false;
        WantStages = 0;
        _lineProven = false;
        _inStageMicroseconds = 0;
        _confirmedMicroseconds = -1;
    }
}
