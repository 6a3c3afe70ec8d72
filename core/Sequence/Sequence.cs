namespace StarterCtl.Core;

/// <summary>
/// Where the sequence is and what it wants. The phases write it, <see cref="Interlock"/> decides what the coils get.
/// </summary>
public sealed class Sequence
{
    private readonly FaultLatch _faults;
    private readonly EventLog _log;
    private readonly Explanation _why;

    /// <summary>Present phase.</summary>
    public Phase Phase = Phase.Ready;

    /// <summary>Stage in effect, 1 to the stage count; stage count + 1 once all resistance is out.</summary>
    public int Stage = 1;

    /// <summary>Line coil wanted.</summary>
    public bool WantLine;

    /// <summary>Stage coils wanted, bit 0 = stage 1.</summary>
    public int WantStages;

    /// <summary>Brake coil wanted.</summary>
    public bool WantBrake;

    /// <summary>Field coil wanted.</summary>
    public bool WantField;

    /// <summary>True once the line contact has been proven closed in this start.</summary>
    public bool LineProven;

    /// <summary>True once this stop has braked.</summary>
    public bool HasBraked;

    /// <summary>Time in the present stage with the line closed, microseconds.</summary>
    public int InStageMicroseconds;

    /// <summary>Time for which every condition of a cutout has held, microseconds; negative while they do not.</summary>
    public int ConfirmedMicroseconds = -1;

    /// <summary>Time in the phase, where the phase counts it, microseconds.</summary>
    public int InPhaseMicroseconds;

    /// <summary>Why a press of start would be refused on this tick; held to <see cref="Phase.Ready"/>.</summary>
    public Refusal Refusals;

    /// <summary>Builds a sequence that is ready.</summary>
    public Sequence(FaultLatch faults, EventLog log, Explanation why)
    {
        _faults = faults;
        _log = log;
        _why = why;
    }

    /// <summary>Coil bit of the stage in effect.</summary>
    public int StageBit => StageBits.Of(Stage);

    /// <summary>Enters a phase from its beginning: no line, no stage, no brake wanted. The field is the phase's own affair.</summary>
    public void Enter(Phase phase)
    {
        GoTo(phase);
        Stage = 1;
        WantLine = false;
        WantStages = 0;
        WantBrake = false;
        LineProven = false;
        InStageMicroseconds = 0;
        ConfirmedMicroseconds = -1;
        InPhaseMicroseconds = 0;
    }

    /// <summary>Changes the phase and nothing else.</summary>
    public void GoTo(Phase phase)
    {
        if (phase != Phase) _log.Add(EventKind.Phase, (int)phase, (int)Phase);
        Phase = phase;
    }

    /// <summary>Makes a stage the one in effect from now.</summary>
    public void BeginStage(int stage)
    {
        Stage = stage;
        InStageMicroseconds = 0;
        ConfirmedMicroseconds = -1;
    }

    /// <summary>Trips for a fault that only the sequence can know.</summary>
    public void Trip(FaultId id, float measured, float limit)
    {
        _faults.Raise(id, measured, limit, Phase, Stage);
        Enter(Phase.Tripped);
        _why.Set(Reason.FaultLatched, (int)id, 0f, 0);
    }
}
