namespace StarterCtl.Core;

/// <summary>Every contact open, waiting for a press of start that nothing speaks against.</summary>
public sealed class ReadyPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly Protector _protector;
    private readonly StartCounter _starts;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public ReadyPhase(
        Settings settings, Sequence sequence, ContactProof contacts, Protector protector, StartCounter starts, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _contacts = contacts;
        _protector = protector;
        _starts = starts;
        _why = why;
    }

    /// <summary>Collects everything that speaks against a start, and looks for the press.</summary>
    /// <returns>True when the start is accepted.</returns>
    public bool Step(Readings readings, Estimate estimate, bool startEdge)
    {
        _sequence.WantField = false;
        Refusal refusals = ContactRefusals() | SurroundingRefusals(readings) | ShaftRefusals(readings, estimate);
        if (readings.StopPressed) refusals |= Refusal.StopPressed;
        if (_protector.Heat.IsMotorTooHot) refusals |= Refusal.MotorTooHot;
        if (_protector.Heat.IsResistorTooHot) refusals |= Refusal.ResistorTooHot;
        if (_starts.IsFull) refusals |= Refusal.TooManyStarts;
        if (readings.StartPressed && !startEdge) refusals |= Refusal.StartHeld;
        _sequence.Refusals = refusals;

        if (!readings.StartPressed) _why.Set(Reason.WaitingForStart, 0f, 0f, 0);
        else if (refusals != Refusal.None) _why.Set(Reason.StartRefused, (int)refusals, 0f, 0);
        if (!readings.StartPressed || refusals != Refusal.None) return false;
        _starts.Add();
        return true;
    }

    private Refusal ContactRefusals()
    {
        Refusal refusals = Refusal.None;
        if (_contacts.LineClosed) refusals |= Refusal.LineNotOpen;
        if (_contacts.StagesClosed != 0) refusals |= Refusal.StageNotOpen;
        if (_contacts.BrakeClosed) refusals |= Refusal.BrakeNotOpen;
        return refusals;
    }

    private Refusal SurroundingRefusals(Readings readings)
    {
        Refusal refusals = Refusal.None;
        if ((readings.Permissives & _settings.RequiredPermissives) != _settings.RequiredPermissives) refusals |= Refusal.PermissiveMissing;
        if (_protector.Supply.IsLow) refusals |= Refusal.SupplyLow;
        if (_protector.Supply.IsHigh) refusals |= Refusal.SupplyHigh;
        return refusals;
    }

    private Refusal ShaftRefusals(Readings readings, Estimate estimate)
    {
        // Where it may be unknown for a while, the first pulse comes only once the shaft turns; elsewhere an unknown speed trips.
        if (!estimate.SpeedKnown) return Refusal.None;
        if (readings.SpeedRadPerSec < -_settings.StandstillRadPerSec) return Refusal.ShaftTurnsBackwards;
        return !_settings.SpinningStart && readings.SpeedRadPerSec > _settings.StandstillRadPerSec ? Refusal.ShaftTurns : Refusal.None;
    }
}
