namespace StarterCtl.Core;

/// <summary>The brake resistor takes the energy of the shaft until it is slow enough to be let go.</summary>
public sealed class BrakingPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public BrakingPhase(Settings settings, Sequence sequence, ContactProof contacts, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _contacts = contacts;
        _why = why;
    }

    /// <summary>One look. A release of stop does not end the braking, and a press of start does not either.</summary>
    public void Step(int elapsedMicroseconds, Readings readings, Estimate estimate)
    {
        _sequence.InPhaseMicroseconds = Elapsed.Add(_sequence.InPhaseMicroseconds, elapsedMicroseconds);
        float speed = Magnitude.Of(readings.SpeedRadPerSec);
        int microsecondsLeft = _settings.MaximumBrakeMicroseconds - _sequence.InPhaseMicroseconds;
        if (estimate.SpeedKnown && speed <= _settings.BrakeReleaseRadPerSec)
        {
            _sequence.Enter(Phase.Stopping);
            _sequence.HasBraked = true;
            _why.Set(Reason.WaitingForContactsToOpen, 0f, 0f, _settings.ContactMicroseconds);
        }
        else if (microsecondsLeft <= 0)
        {
            _sequence.Trip(FaultId.BrakeDidNotFinish, readings.SpeedRadPerSec, _settings.BrakeReleaseRadPerSec);
        }
        else if (_contacts.LineClosed || _contacts.StagesClosed != 0)
        {
            // The brake opens for it, and must not close again behind its delay and its check of the back-EMF.
            _sequence.Trip(FaultId.ContactDidNotOpen, _contacts.LineClosed ? ContactNumber.Line : _contacts.FirstStrayStage, 0f);
        }
        else if (!_contacts.BrakeClosed)
        {
            _why.Set(Reason.WaitingForBrakeContact, 0f, 0f, _contacts.BrakeMicrosecondsLeft);
        }
        else
        {
            _why.Set(Reason.Braking, readings.SpeedRadPerSec, _settings.BrakeReleaseRadPerSec, microsecondsLeft);
        }
    }
}
