using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>The next value of the set, in the order of the table of settings. Body of <see cref="MessageId.PutValue"/>.</summary>
public sealed class UploadValue
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 6;

    /// <summary>Offset of <see cref="Setting"/>.</summary>
    public const int SettingAt = 0;

    /// <summary>Offset of <see cref="Index"/>.</summary>
    public const int IndexAt = 1;

    /// <summary>Offset of <see cref="Bits"/>.</summary>
    public const int BitsAt = 2;

    /// <summary>Which setting.</summary>
    public SettingId Setting;

    /// <summary>Which of its values, from 0.</summary>
    public int Index;

    /// <summary>A whole number itself, any other by its bits (<see cref="SingleBits"/>).</summary>
    public int Bits;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.PutValue, BodyBytes);
        frame.PutByte(SettingAt, (int)Setting);
        frame.PutByte(IndexAt, Index);
        frame.PutInt(BitsAt, Bits);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Setting = (SettingId)frame.GetByte(SettingAt);
        Index = frame.GetByte(IndexAt);
        Bits = frame.GetInt(BitsAt);
    }
}
