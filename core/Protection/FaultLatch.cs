namespace StarterCtl.Core;

/// <summary>Keeps the first fault, with what was read when it came, until it is cleared; what comes later goes to the log only.</summary>
public sealed class FaultLatch
{
    private readonly EventLog _log;

    /// <summary>The first fault, or <see cref="FaultId.None"/>.</summary>
    public FaultId Id;

    /// <summary>What was measured when it was raised; the unit is in the fault's description.</summary>
    public float Value;

    /// <summary>The limit that it broke.</summary>
    public float Limit;

    /// <summary>Which reading it speaks of.</summary>
    public Channel Channel;

    /// <summary>Phase in which it was raised; without a fault <see cref="Phase.NotSetUp"/>.</summary>
    public Phase InPhase;

    /// <summary>Stage in effect when it was raised, 1 to the stage count + 1; without a fault 0.</summary>
    public int InStage;

    /// <summary>Readings, estimates and coils on the tick that raised it.</summary>
    public readonly Snapshot Snapshot = new Snapshot();

    /// <summary>Builds an empty latch.</summary>
    /// <param name="log">Receives every fault, the first and the later ones.</param>
    public FaultLatch(EventLog log)
    {
        _log = log;
    }

    /// <summary>True while a fault is latched.</summary>
    public bool IsLatched => Id != FaultId.None;

    /// <summary>Latches a fault unless one is latched already, and logs it either way.</summary>
    public void Raise(FaultId id, float measured, float limit, Phase phase, int stage)
    {
        _log.Add(EventKind.Fault, (int)id, measured);
        if (Id != FaultId.None) return;
        Id = id;
        Value = measured;
        Limit = limit;
        Channel = Channel.None;
        InPhase = phase;
        InStage = stage;
    }

    /// <summary>Forgets the fault; the log keeps it.</summary>
    public void Clear()
    {
        Id = FaultId.None;
        Value = 0f;
        Limit = 0f;
        Channel = Channel.None;
        InPhase = Phase.NotSetUp;
        InStage = 0;
    }
}
