namespace StarterCtl.Core;

/// <summary>The last word: composes the outputs from what is wanted and refuses what must never be, whatever was decided.</summary>
public sealed class Interlock
{
    /// <summary>Line coil as the last tick left it.</summary>
    public bool LineCommanded;

    /// <summary>Stage coils as the last tick left them, bit 0 = stage 1.</summary>
    public int StagesCommanded;

    /// <summary>Writes every output.</summary>
    /// <param name="wanted">The sequence and its wishes.</param>
    /// <param name="isLatched">True while a fault is latched.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="outputs">Receives this tick's commands.</param>
    public void Apply(Sequencer wanted, bool isLatched, Readings readings, Outputs outputs)
    {
        outputs.AllOff();

        bool powered = !isLatched && !readings.StopPressed && !readings.EmergencyStop
            && (wanted.Phase == Phase.Accelerating || wanted.Phase == Phase.Running);
        // While the line is open no stage contact may be closed but a commanded one: the current depends on every other section.
        bool mayClose = (readings.StagesClosed & ~StagesCommanded) == 0 || (LineCommanded && readings.LineClosed);
        if (powered && wanted.WantLine && mayClose)
        {
            outputs.CloseLine = true;
            outputs.CloseStages = AllowedStages(wanted.WantStages, StagesCommanded, readings);
        }

        LineCommanded = outputs.CloseLine;
        StagesCommanded = outputs.CloseStages;
        outputs.ReadyLamp = wanted.Phase == Phase.Ready && wanted.Refusals == Refusal.None;
        outputs.RunningLamp = wanted.Phase == Phase.Running && readings.LineClosed && readings.StagesClosed == StagesCommanded;
        outputs.TrippedLamp = isLatched;
    }

    // In order, one at a time, and the next only with the line and every earlier stage proven closed, and no other.
    private static int AllowedStages(int wantStages, int wereClosed, Readings readings)
    {
        bool earlierProven = readings.LineClosed && readings.StagesClosed == wereClosed;
        int mostStages = earlierProven ? (wereClosed << 1) | 1 : wereClosed;
        int allowed = 0;
        for (int bit = 1; (wantStages & mostStages & bit) != 0; bit <<= 1) allowed |= bit;
        return allowed;
    }
}
