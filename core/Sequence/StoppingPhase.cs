namespace StarterCtl.Core;

/// <summary>Waits until every contact is proven open; then brakes, if a brake is fitted and the shaft still turns.</summary>
public sealed class StoppingPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public StoppingPhase(Settings settings, Sequence sequence, ContactProof contacts, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _contacts = contacts;
        _why = why;
    }

    /// <summary>Opens everything.</summary>
    public void Begin()
    {
        _sequence.Enter(Phase.Stopping);
        _sequence.HasBraked = false;
        ExplainContacts();
    }

    /// <summary>Waits.</summary>
    /// <returns>True when nothing is left to wait for.</returns>
    public bool Step(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        if (!_contacts.AllOpen)
        {
            _sequence.ConfirmedMicroseconds = -1;
            ExplainContacts();
            // A contact that chatters must not hold the stop up for ever: the time that began goes on.
            if (_sequence.InPhaseMicroseconds > 0) CountWait(elapsedMicroseconds, readings);
            return false;
        }

        if (!_settings.BrakeFitted || _sequence.HasBraked || !TurnsTooFast(readings, estimate)) return true;
        WaitForBrake(elapsedMicroseconds, readings, estimate);
        return false;
    }

    private bool TurnsTooFast(Readings readings, Estimate estimate) =>
        estimate.SpeedKnown && Magnitude.Of(readings.SpeedRadPerSec) > _settings.BrakeReleaseRadPerSec;

    private void WaitForBrake(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        if (!CountWait(elapsedMicroseconds, readings)) return;
        // The delay begins on the tick that finds the contacts open, however long that tick was.
        _sequence.ConfirmedMicroseconds = _sequence.ConfirmedMicroseconds >= 0 ? Elapsed.Add(_sequence.ConfirmedMicroseconds, elapsedMicroseconds) : 0;
        float backEmfVolts = Magnitude.Of(estimate.BackEmfVolts);
        float brakeVolts = _settings.PeakAmps * _settings.BrakeOhms + _settings.BrushDropVolts;
        if (_sequence.ConfirmedMicroseconds < _settings.BrakeDelayMicroseconds)
        {
            _why.Set(Reason.BrakeDelay, 0f, 0f, _settings.BrakeDelayMicroseconds - _sequence.ConfirmedMicroseconds);
        }
        else if (!_contacts.IsDead(readings))
        {
            ExplainContacts();
        }
        else if (!(backEmfVolts <= brakeVolts))
        {
            _why.Set(Reason.BackEmfAboveBrake, backEmfVolts, brakeVolts, _settings.MaximumBrakeMicroseconds - _sequence.InPhaseMicroseconds);
        }
        else
        {
            _sequence.Enter(Phase.Braking);
            _sequence.WantBrake = true;
            _why.Set(Reason.WaitingForBrakeContact, 0f, 0f, _settings.ContactMicroseconds);
        }
    }

    // False when the wait for the brake has taken too long.
    private bool CountWait(int elapsedMicroseconds, Readings readings)
    {
        _sequence.InPhaseMicroseconds = Elapsed.Add(_sequence.InPhaseMicroseconds, elapsedMicroseconds);
        if (_sequence.InPhaseMicroseconds < _settings.MaximumBrakeMicroseconds) return true;
        _sequence.Trip(FaultId.BrakeDidNotFinish, readings.SpeedRadPerSec, _settings.BrakeReleaseRadPerSec);
        return false;
    }

    private void ExplainContacts()
    {
        int microsecondsLeft = _contacts.LineClosed ? _contacts.LineMicrosecondsLeft
            : _contacts.StagesClosed != 0 ? _contacts.StagesMicrosecondsLeft : _contacts.BrakeMicrosecondsLeft;
        _why.Set(Reason.WaitingForContactsToOpen, 0f, 0f, microsecondsLeft);
    }
}
