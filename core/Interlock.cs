namespace StarterCtl.Core;

/// <summary>The last word: composes the outputs from what is wanted and refuses what must never be, whatever was decided.</summary>
public sealed class Interlock
{
    private readonly bool _hasFieldContactor;

    /// <summary>Line coil as the last tick left it.</summary>
    public bool LineCommanded;

    /// <summary>Stage coils as the last tick left them, bit 0 = stage 1.</summary>
    public int StagesCommanded;

    /// <summary>Brake coil as the last tick left it.</summary>
    public bool BrakeCommanded;

    /// <summary>Field coil as the last tick left it.</summary>
    public bool FieldCommanded;

    /// <summary>Builds an interlock with every coil off.</summary>
    public Interlock(Settings settings)
    {
        _hasFieldContactor = settings.FieldContactorFitted;
    }

    /// <summary>Writes every output.</summary>
    /// <param name="wanted">The sequence and its wishes.</param>
    /// <param name="isLatched">True while a fault is latched.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="contacts">Which contacts are proven where.</param>
    /// <param name="law">Which stages the present back-EMF permits.</param>
    /// <param name="outputs">Receives this tick's commands.</param>
    public void Apply(Sequence wanted, bool isLatched, Readings readings, ContactProof contacts, PeakLaw law, Outputs outputs)
    {
        bool powered = !isLatched && !readings.StopPressed && !readings.EmergencyStop
            && (wanted.Phase == Phase.Accelerating || wanted.Phase == Phase.Running);
        bool closeLine = false;
        int closeStages = 0;
        if (powered && !BrakeCommanded && !contacts.BrakeClosed)
        {
            closeLine = (LineCommanded || contacts.IsDead(readings)) && MayLineClose(wanted, contacts, law);
            if (closeLine) closeStages = AllowedStages(wanted.WantStages, StagesCommanded, contacts);
            else if (!wanted.WantLine && IsLineOpen(contacts) && contacts.IsDead(readings)) closeStages = PresetStages(wanted.WantStages, contacts, law);
        }

        bool closeBrake = wanted.WantBrake && wanted.Phase == Phase.Braking && !isLatched && !readings.EmergencyStop
            && IsLineOpen(contacts) && (BrakeCommanded || contacts.IsDead(readings)) && contacts.StagesClosed == 0;
        // The field never goes under a closed line, not even in a trip: the motor would run away. A contact that was told to
        // close on the last tick may still be on its way in.
        bool isNeeded = FieldCommanded && (LineCommanded || closeLine || contacts.LineClosed);
        bool closeField = _hasFieldContactor && ((wanted.WantField && !isLatched) || isNeeded);

        outputs.CloseLine = LineCommanded = closeLine;
        outputs.CloseStages = StagesCommanded = closeStages;
        outputs.CloseBrake = BrakeCommanded = closeBrake;
        outputs.CloseField = FieldCommanded = closeField;
        outputs.ReadyLamp = wanted.Phase == Phase.Ready && wanted.Refusals == Refusal.None;
        outputs.RunningLamp = wanted.Phase == Phase.Running && contacts.LineClosed && contacts.StagesClosed == closeStages;
        outputs.TrippedLamp = isLatched;
    }

    private bool IsLineOpen(ContactProof contacts) => !LineCommanded && !contacts.LineClosed;

    // While the line is open no stage contact may be closed but a commanded one: the current depends on every other section.
    private bool MayLineClose(Sequence wanted, ContactProof contacts, PeakLaw law)
    {
        if (!wanted.WantLine || (_hasFieldContactor && !FieldCommanded)) return false;
        if (LineCommanded) return contacts.LineClosed || (contacts.StagesClosed & ~StagesCommanded) == 0;
        // Stages that are in before the line: proven, wanted, and permitted by the present back-EMF.
        if (contacts.LineClosed || contacts.StagesClosed != StagesCommanded) return false;
        return StagesCommanded == 0 || (StagesCommanded & ~(wanted.WantStages & Permitted(law))) == 0;
    }

    // In order, one at a time, and the next only with the line and every earlier stage proven closed, and no other.
    private static int AllowedStages(int wantStages, int wereClosed, ContactProof contacts)
    {
        bool earlierProven = contacts.LineClosed && contacts.StagesClosed == wereClosed;
        return StageBits.InOrder(wantStages & (earlierProven ? (wereClosed << 1) | 1 : wereClosed));
    }

    // The same without the line, and each only while the back-EMF permits it.
    private int PresetStages(int wantStages, ContactProof contacts, PeakLaw law)
    {
        int mostStages = contacts.StagesClosed == StagesCommanded ? (StagesCommanded << 1) | 1 : StagesCommanded;
        return StageBits.InOrder(wantStages & mostStages & Permitted(law));
    }

    private static int Permitted(PeakLaw law) => StageBits.UpTo(law.StagesToPreset());
}
