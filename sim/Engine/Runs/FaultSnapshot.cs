using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller read, made of it and commanded on the tick that latched a fault.</summary>
/// <param name="SupplyVolts">Supply, V.</param>
/// <param name="ArmatureAmps">Armature current, A.</param>
/// <param name="SpeedRadPerSec">Speed as read, rad/s.</param>
/// <param name="SpeedValid">True if the speed was known.</param>
/// <param name="FieldAmps">Field current as read, A; 0 without a field circuit.</param>
/// <param name="BackEmfVolts">Back-EMF from the speed, V.</param>
/// <param name="ResistiveBackEmfVolts">Back-EMF from the voltage equation, V.</param>
/// <param name="LineClosed">Auxiliary contact of the line.</param>
/// <param name="StagesClosed">Auxiliary contacts of the stages, bit 0 = stage 1.</param>
/// <param name="LineCommanded">Line coil before the fault.</param>
/// <param name="StagesCommanded">Stage coils before the fault, bit 0 = stage 1.</param>
public sealed record FaultSnapshot(
    float SupplyVolts,
    float ArmatureAmps,
    float SpeedRadPerSec,
    bool SpeedValid,
    float FieldAmps,
    float BackEmfVolts,
    float ResistiveBackEmfVolts,
    bool LineClosed,
    int StagesClosed,
    bool LineCommanded,
    int StagesCommanded)
{
    /// <summary>Copies what the latch keeps.</summary>
    public static FaultSnapshot Of(Snapshot kept) => new(
        kept.SupplyVolts, kept.ArmatureAmps, kept.SpeedRadPerSec, kept.SpeedValid, kept.FieldAmps, kept.BackEmfVolts, kept.ResistiveBackEmfVolts,
        kept.LineClosed, kept.StagesClosed, kept.LineCommanded, kept.StagesCommanded);
}
