using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Announces a whole set of settings. Body of <see cref="MessageId.BeginUpload"/>.</summary>
public sealed class UploadBegin
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 12;

    /// <summary>Offset of <see cref="SettingsVersion"/>.</summary>
    public const int SettingsVersionAt = 0;

    /// <summary>Offset of <see cref="ValueCount"/>.</summary>
    public const int ValueCountAt = 2;

    /// <summary>Offset of <see cref="Checksum"/>.</summary>
    public const int ChecksumAt = 4;

    /// <summary>Offset of <see cref="CaseHash"/>.</summary>
    public const int CaseHashAt = 8;

    /// <summary>Version of the table of settings that the set was made by.</summary>
    public int SettingsVersion;

    /// <summary>How many values will come.</summary>
    public int ValueCount;

    /// <summary>What <see cref="SettingsChecksum"/> comes to over the set.</summary>
    public int Checksum;

    /// <summary>A number that stands for the case that the set was designed from; kept and given back, not judged.</summary>
    public int CaseHash;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.BeginUpload, BodyBytes);
        frame.PutShort(SettingsVersionAt, SettingsVersion);
        frame.PutShort(ValueCountAt, ValueCount);
        frame.PutInt(ChecksumAt, Checksum);
        frame.PutInt(CaseHashAt, CaseHash);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        SettingsVersion = frame.GetShort(SettingsVersionAt);
        ValueCount = frame.GetShort(ValueCountAt);
        Checksum = frame.GetInt(ChecksumAt);
        CaseHash = frame.GetInt(CaseHashAt);
    }
}
