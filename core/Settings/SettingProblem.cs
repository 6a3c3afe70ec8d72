namespace StarterCtl.Core;

/// <summary>What is wrong with a setting. Numbers are published and never reused.</summary>
public enum SettingProblem
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Outside its range, not a number, or its values are not there.</summary>
    OutOfRange = 1,

    /// <summary>Its values must fall from one to the next.</summary>
    DoesNotFall = 2,

    /// <summary>Its values must rise from 0, or must not fall.</summary>
    DoesNotRise = 3,

    /// <summary>It must be above another setting.</summary>
    NotAboveOther = 4,

    /// <summary>It must not be below another setting.</summary>
    BelowOther = 5,

    /// <summary>It is used as it stands only if another setting is switched on or set.</summary>
    NeedsOther = 6,

    /// <summary>It must be below another setting.</summary>
    NotBelowOther = 7,
}
