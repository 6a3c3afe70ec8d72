namespace StarterCtl.Core;

/// <summary>A fault is latched. Waits for a press of reset that finds the cause gone and start released.</summary>
public sealed class TrippedPhase
{
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly FaultLatch _faults;
    private readonly EventLog _log;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public TrippedPhase(Sequence sequence, ContactProof contacts, FaultLatch faults, EventLog log, Explanation why)
    {
        _sequence = sequence;
        _contacts = contacts;
        _faults = faults;
        _log = log;
        _why = why;
    }

    /// <summary>One look.</summary>
    /// <returns>True once the fault is cleared.</returns>
    public bool Step(Readings readings, bool resetEdge, bool causePresent)
    {
        // A motor whose line contact hangs would run away without its field: that one goes last.
        if (!_contacts.LineClosed) _sequence.WantField = false;
        if (!resetEdge)
        {
            _why.Set(Reason.FaultLatched, (int)_faults.Id, 0f, 0);
            return false;
        }

        if (causePresent || readings.StartPressed)
        {
            _why.Set(Reason.ResetRefused, (int)_faults.Id, 0f, 0);
            return false;
        }

        _log.Add(EventKind.Reset, (int)_faults.Id, 0f);
        _faults.Clear();
        return true;
    }
}
