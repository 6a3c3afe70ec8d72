namespace StarterCtl.Core;

/// <summary>Which reading a fault speaks of. Numbers are published and never reused.</summary>
public enum Channel
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary><see cref="Readings.SupplyVolts"/>.</summary>
    Supply = 1,

    /// <summary><see cref="Readings.ArmatureAmps"/>.</summary>
    ArmatureCurrent = 2,

    /// <summary><see cref="Readings.SpeedRadPerSec"/>.</summary>
    Speed = 3,

    /// <summary><see cref="Readings.FieldAmps"/>.</summary>
    FieldCurrent = 4,

    /// <summary><see cref="Readings.ResistorCelsius"/>.</summary>
    ResistorTemperature = 5,

    /// <summary>Every reading at once: <see cref="Readings.Stale"/>.</summary>
    All = 6,
}
