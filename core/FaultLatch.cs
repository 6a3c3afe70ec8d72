namespace StarterCtl.Core;

/// <summary>Keeps the first fault until it is cleared; what comes later cannot overwrite it.</summary>
public sealed class FaultLatch
{
    /// <summary>The first fault, or <see cref="FaultId.None"/>.</summary>
    public FaultId Id;

    /// <summary>What was measured when it was raised; the unit is in the fault's description.</summary>
    public float Value;

    /// <summary>The limit that it broke.</summary>
    public float Limit;

    /// <summary>Phase in which it was raised; without a fault <see cref="Phase.NotSetUp"/>.</summary>
    public Phase InPhase;

    /// <summary>Stage in effect when it was raised, 1 to the stage count + 1; without a fault 0.</summary>
    public int InStage;

    /// <summary>True while a fault is latched.</summary>
    public bool IsLatched => Id != FaultId.None;

    /// <summary>Latches a fault unless one is latched already.</summary>
    public void Raise(FaultId id, float measured, float limit, Phase phase, int stage)
    {
        if (Id != FaultId.None) return;
        Id = id;
        Value = measured;
        Limit = limit;
        InPhase = phase;
        InStage = stage;
    }

    /// <summary>Forgets the fault.</summary>
    public void Clear()
    {
        Id = FaultId.None;
        Value = 0f;
        Limit = 0f;
        InPhase = Phase.NotSetUp;
        InStage = 0;
    }
}
