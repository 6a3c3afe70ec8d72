namespace StarterCtl.Firmware;

/// <summary>The analogue channels that can be calibrated. Numbers are published and never reused.</summary>
public enum CalibrationChannel
{
    /// <summary>Voltage at the starter's input terminals, V.</summary>
    SupplyVolts = 0,

    /// <summary>Armature current, A.</summary>
    ArmatureAmps = 1,

    /// <summary>Field current, A.</summary>
    FieldAmps = 2,

    /// <summary>Speed by a tacho generator, rad/s.</summary>
    TachoSpeed = 3,

    /// <summary>How many there are; no channel.</summary>
    Count = 4,
}
