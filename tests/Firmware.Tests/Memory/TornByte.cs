namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>What a power cut makes of what was being written or erased.</summary>
public enum TornByte
{
    /// <summary>It stays as it was.</summary>
    Old,

    /// <summary>It is done; only what comes behind is missing.</summary>
    New,

    /// <summary>Bits as they fall, in all that is left of the page where it is an erasure.</summary>
    Anything,
}
