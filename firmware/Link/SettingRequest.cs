using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Asks for one value of the settings that are kept. Body of <see cref="MessageId.ReadSetting"/>.</summary>
public sealed class SettingRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 2;

    /// <summary>Offset of <see cref="Setting"/>.</summary>
    public const int SettingAt = 0;

    /// <summary>Offset of <see cref="Index"/>.</summary>
    public const int IndexAt = 1;

    /// <summary>Which setting.</summary>
    public SettingId Setting;

    /// <summary>Which of its values, from 0.</summary>
    public int Index;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.ReadSetting, BodyBytes);
        frame.PutByte(SettingAt, (int)Setting);
        frame.PutByte(IndexAt, Index);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Setting = (SettingId)frame.GetByte(SettingAt);
        Index = frame.GetByte(IndexAt);
    }
}
