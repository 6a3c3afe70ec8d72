namespace StarterCtl.Core;

/// <summary>What was read, made of it and commanded on one tick.</summary>
public sealed class Snapshot
{
    /// <summary>Time since the controller was built, s; stops at the largest int.</summary>
    public int UptimeSeconds;

    /// <summary>Supply, V.</summary>
    public float SupplyVolts;

    /// <summary>Armature current, A.</summary>
    public float ArmatureAmps;

    /// <summary>Speed, rad/s.</summary>
    public float SpeedRadPerSec;

    /// <summary>True if the speed was known.</summary>
    public bool SpeedValid;

    /// <summary>Field current, A.</summary>
    public float FieldAmps;

    /// <summary>Back-EMF from the speed, V.</summary>
    public float BackEmfVolts;

    /// <summary>Back-EMF from the voltage equation, V.</summary>
    public float ResistiveBackEmfVolts;

    /// <summary>Auxiliary contact of the line.</summary>
    public bool LineClosed;

    /// <summary>Auxiliary contacts of the stages.</summary>
    public int StagesClosed;

    /// <summary>Line coil before the fault.</summary>
    public bool LineCommanded;

    /// <summary>Stage coils before the fault.</summary>
    public int StagesCommanded;

    /// <summary>Takes everything over.</summary>
    public void Take(int uptimeSeconds, Readings readings, Estimate estimate, Interlock coils)
    {
        UptimeSeconds = uptimeSeconds;
        SupplyVolts = readings.SupplyVolts;
        ArmatureAmps = readings.ArmatureAmps;
        SpeedRadPerSec = readings.SpeedRadPerSec;
        SpeedValid = readings.SpeedValid;
        FieldAmps = readings.FieldAmps;
        BackEmfVolts = estimate.BackEmfVolts;
        ResistiveBackEmfVolts = estimate.ResistiveBackEmfVolts;
        LineClosed = readings.LineClosed;
        StagesClosed = readings.StagesClosed;
        LineCommanded = coils.LineCommanded;
        StagesCommanded = coils.StagesCommanded;
    }
}
