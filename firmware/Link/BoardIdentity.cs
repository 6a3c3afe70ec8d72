namespace StarterCtl.Firmware;

/// <summary>What a board says of itself; filled once at start-up.</summary>
public sealed class BoardIdentity
{
    /// <summary>Name of the board; of it, the first <see cref="HelloAnswer.NameBytes"/> characters are sent, ASCII only.</summary>
    public string Name = "";

    /// <summary>Version of firmware and core, first number, 0 to 255.</summary>
    public int VersionMajor;

    /// <summary>Second number, 0 to 255.</summary>
    public int VersionMinor;

    /// <summary>Third number, 0 to 255.</summary>
    public int VersionPatch;

    /// <summary>What the boot check came to.</summary>
    public int BootCheckHash;

    /// <summary>Why the board began anew.</summary>
    public ResetCause ResetCause;
}
