namespace StarterCtl.Core;

/// <summary>How bad a fault is for the people around the drive. Numbers are published and never reused.</summary>
public enum FaultSeverity
{
    /// <summary>No fault.</summary>
    None = 0,

    /// <summary>Every contactor was commanded open and nothing speaks against their having opened.</summary>
    Off = 1,

    /// <summary>A contact may not have opened: the motor may still be live.</summary>
    MayBeLive = 2,
}
