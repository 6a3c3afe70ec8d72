namespace StarterCtl.Core;

/// <summary>What running and accelerating do while a contact is not where its coil wants it.</summary>
public sealed class ContactWait
{
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly PeakLaw _law;
    private readonly Explanation _why;

    /// <summary>Builds the rule.</summary>
    public ContactWait(Sequence sequence, ContactProof contacts, PeakLaw law, Explanation why)
    {
        _sequence = sequence;
        _contacts = contacts;
        _law = law;
        _why = why;
    }

    /// <summary>True while line, stages and brake are where their coils want them.</summary>
    public bool IsOver => _contacts.LineClosed && _contacts.StagesClosed == _sequence.WantStages && !_contacts.BrakeClosed;

    /// <summary>True while the line is in.</summary>
    public bool IsLineIn => _contacts.LineClosed;

    /// <summary>
    /// Trips on a contact that nobody commanded: on a stage's while the line is not in, for the line must not meet less resistance
    /// than the stage in effect; on the brake's always, for the line that opens for it must not close again by itself.
    /// </summary>
    /// <returns>True if it tripped.</returns>
    public bool TripOnStrayContact()
    {
        if (_contacts.BrakeClosed)
        {
            _sequence.Trip(FaultId.ContactDidNotOpen, ContactNumber.Brake, 0f);
            return true;
        }

        bool isStray = (_contacts.StagesClosed & ~_sequence.WantStages) != 0;
        if (!isStray || (_sequence.LineProven && _contacts.LineClosed)) return false;
        _sequence.Trip(FaultId.ContactDidNotOpen, _contacts.FirstStrayStage, 0f);
        return true;
    }

    /// <summary>
    /// A contact that was seen closed and opened may close again by itself: it must then not meet so slow a shaft that the peak
    /// would be passed, whether the stage commanded last is proven closed yet or not.
    /// </summary>
    public void Wait()
    {
        int stage = _sequence.Stage;
        int provenStages = StageBits.UpTo(stage - 1);
        bool isLost = !_contacts.LineClosed || (_contacts.StagesClosed & provenStages) != provenStages || _contacts.HasUnprovenStageOpened;
        int lastStage = (_sequence.WantStages & _sequence.StageBit) != 0 ? stage : stage - 1;
        _sequence.ConfirmedMicroseconds = -1;
        if (isLost && lastStage > 0 && !_law.IsKeptBySpeed(lastStage))
        {
            _sequence.Trip(FaultId.ContactDidNotClose, _contacts.LineClosed ? _contacts.FirstDisagreeingStage : ContactNumber.Line, 0f);
        }
        else if (!_contacts.LineClosed)
        {
            _why.Set(Reason.WaitingForLineContact, 0f, 0f, _contacts.LineMicrosecondsLeft);
        }
        else if ((_contacts.StagesClosed & ~_sequence.WantStages) != 0)
        {
            _why.Set(Reason.WaitingForContactsToOpen, 0f, 0f, _contacts.StagesMicrosecondsLeft);
        }
        else
        {
            _why.Set(Reason.WaitingForStageContact, _contacts.FirstStageBeside(_sequence.WantStages), 0f, _contacts.StagesMicrosecondsLeft);
        }
    }
}
