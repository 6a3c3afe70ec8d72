namespace StarterCtl.Core;

/// <summary>Names a setting, so that a refused set says which one was wrong. Numbers are published and never reused.</summary>
public enum SettingId
{
    /// <summary>No setting: the check passed.</summary>
    None = 0,

    /// <summary><see cref="Settings.StageCount"/>.</summary>
    StageCount = 1,

    /// <summary><see cref="Settings.StageOhms"/>.</summary>
    StageOhms = 2,

    /// <summary><see cref="Settings.VoltsLeft"/>.</summary>
    VoltsLeft = 3,

    /// <summary><see cref="Settings.MachineConstant"/>.</summary>
    MachineConstant = 4,

    /// <summary><see cref="Settings.BrushDropVolts"/>.</summary>
    BrushDropVolts = 5,

    /// <summary><see cref="Settings.LockoutAmps"/>.</summary>
    LockoutAmps = 6,

    /// <summary><see cref="Settings.InstantTripAmps"/>.</summary>
    InstantTripAmps = 7,

    /// <summary><see cref="Settings.HighestSupplyVolts"/>.</summary>
    HighestSupplyVolts = 8,

    /// <summary><see cref="Settings.HighestSpeedRadPerSec"/>.</summary>
    HighestSpeedRadPerSec = 9,

    /// <summary><see cref="Settings.SteadyAmpsPerSec"/>.</summary>
    SteadyAmpsPerSec = 10,

    /// <summary><see cref="Settings.ConfirmMicroseconds"/>.</summary>
    ConfirmMicroseconds = 11,

    /// <summary><see cref="Settings.MinimumDwellMicroseconds"/>.</summary>
    MinimumDwellMicroseconds = 12,

    /// <summary><see cref="Settings.MaximumStageMicroseconds"/>.</summary>
    MaximumStageMicroseconds = 13,

    /// <summary><see cref="Settings.ContactMicroseconds"/>.</summary>
    ContactMicroseconds = 14,
}
