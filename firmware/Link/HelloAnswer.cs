using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Who is there. Body of <see cref="MessageId.Hello"/>.</summary>
public sealed class HelloAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 48;

    /// <summary>Room for the board's name, bytes.</summary>
    public const int NameBytes = 24;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="ProtocolVersion"/>.</summary>
    public const int ProtocolVersionAt = 1;

    /// <summary>Offset of <see cref="Phase"/>.</summary>
    public const int PhaseAt = 2;

    /// <summary>Offset of <see cref="ResetCause"/>.</summary>
    public const int ResetCauseAt = 3;

    /// <summary>Offset of <see cref="Capabilities"/>.</summary>
    public const int CapabilitiesAt = 4;

    /// <summary>Offset of <see cref="SettingsVersion"/>.</summary>
    public const int SettingsVersionAt = 6;

    /// <summary>Offset of <see cref="SettingsSum"/>.</summary>
    public const int SettingsSumAt = 8;

    /// <summary>Offset of <see cref="CaseHash"/>.</summary>
    public const int CaseHashAt = 12;

    /// <summary>Offset of <see cref="BootCheckHash"/>.</summary>
    public const int BootCheckHashAt = 16;

    /// <summary>Offset of <see cref="VersionMajor"/>.</summary>
    public const int VersionMajorAt = 20;

    /// <summary>Offset of <see cref="VersionMinor"/>.</summary>
    public const int VersionMinorAt = 21;

    /// <summary>Offset of <see cref="VersionPatch"/>.</summary>
    public const int VersionPatchAt = 22;

    /// <summary>Offset of <see cref="LocalPermit"/>.</summary>
    public const int LocalPermitAt = 23;

    /// <summary>Offset of <see cref="BoardName"/>.</summary>
    public const int BoardNameAt = 24;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Version of this protocol.</summary>
    public int ProtocolVersion;

    /// <summary>Phase of the controller.</summary>
    public Phase Phase;

    /// <summary>Why the board began anew.</summary>
    public ResetCause ResetCause;

    /// <summary>What the link can do.</summary>
    public LinkCapabilities Capabilities;

    /// <summary>Version of the board's table of settings.</summary>
    public int SettingsVersion;

    /// <summary>Checksum of the settings that are kept.</summary>
    public int SettingsSum;

    /// <summary>The case that they were designed from, as it was uploaded.</summary>
    public int CaseHash;

    /// <summary>What the boot check came to.</summary>
    public int BootCheckHash;

    /// <summary>Version of firmware and core, first number.</summary>
    public int VersionMajor;

    /// <summary>Second number.</summary>
    public int VersionMinor;

    /// <summary>Third number.</summary>
    public int VersionPatch;

    /// <summary>True while the local permit for a start over the link is given.</summary>
    public bool LocalPermit;

    /// <summary>Name of the board, ASCII, filled up with zeros.</summary>
    public readonly byte[] BoardName = new byte[NameBytes];

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Hello, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(ProtocolVersionAt, ProtocolVersion);
        frame.PutByte(PhaseAt, (int)Phase);
        frame.PutByte(ResetCauseAt, (int)ResetCause);
        frame.PutShort(CapabilitiesAt, (int)Capabilities);
        frame.PutShort(SettingsVersionAt, SettingsVersion);
        frame.PutInt(SettingsSumAt, SettingsSum);
        frame.PutInt(CaseHashAt, CaseHash);
        frame.PutInt(BootCheckHashAt, BootCheckHash);
        frame.PutByte(VersionMajorAt, VersionMajor);
        frame.PutByte(VersionMinorAt, VersionMinor);
        frame.PutByte(VersionPatchAt, VersionPatch);
        frame.PutByte(LocalPermitAt, LocalPermit ? 1 : 0);
        for (int i = 0; i < NameBytes; i++) frame.PutByte(BoardNameAt + i, BoardName[i]);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        ProtocolVersion = frame.GetByte(ProtocolVersionAt);
        Phase = (Phase)frame.GetByte(PhaseAt);
        ResetCause = (ResetCause)frame.GetByte(ResetCauseAt);
        Capabilities = (LinkCapabilities)frame.GetShort(CapabilitiesAt);
        SettingsVersion = frame.GetShort(SettingsVersionAt);
        SettingsSum = frame.GetInt(SettingsSumAt);
        CaseHash = frame.GetInt(CaseHashAt);
        BootCheckHash = frame.GetInt(BootCheckHashAt);
        VersionMajor = frame.GetByte(VersionMajorAt);
        VersionMinor = frame.GetByte(VersionMinorAt);
        VersionPatch = frame.GetByte(VersionPatchAt);
        LocalPermit = frame.GetByte(LocalPermitAt) != 0;
        for (int i = 0; i < NameBytes; i++) BoardName[i] = (byte)frame.GetByte(BoardNameAt + i);
    }
}
