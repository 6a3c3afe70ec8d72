namespace StarterCtl.Firmware;

/// <summary>What was found in a <see cref="TwoCopyStore"/>. Numbers are published and never reused.</summary>
public enum StoreState
{
    /// <summary>A whole copy, of this version, whose content passes its check.</summary>
    Sound = 0,

    /// <summary>Nothing was ever written: both copies are erased.</summary>
    Blank = 1,

    /// <summary>Something was written, and no copy of it is whole.</summary>
    Lost = 2,

    /// <summary>The newest copy is whole, and of another version of what it holds.</summary>
    OtherVersion = 3,

    /// <summary>The newest copy is whole, and its content fails its check.</summary>
    Unsound = 4,

    /// <summary>The memory has no room for two copies at this address, or the address begins no page.</summary>
    NoRoom = 5,
}
