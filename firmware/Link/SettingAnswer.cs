using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>One value of the settings that are kept. Body of <see cref="MessageId.Setting"/>.</summary>
public sealed class SettingAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 8;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Setting"/>.</summary>
    public const int SettingAt = 1;

    /// <summary>Offset of <see cref="Index"/>.</summary>
    public const int IndexAt = 2;

    /// <summary>Offset of <see cref="Count"/>.</summary>
    public const int CountAt = 3;

    /// <summary>Offset of <see cref="Bits"/>.</summary>
    public const int BitsAt = 4;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Which setting.</summary>
    public SettingId Setting;

    /// <summary>Which of its values, from 0.</summary>
    public int Index;

    /// <summary>How many values it has.</summary>
    public int Count;

    /// <summary>A whole number itself, any other by its bits (<see cref="SingleBits"/>).</summary>
    public int Bits;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Setting, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(SettingAt, (int)Setting);
        frame.PutByte(IndexAt, Index);
        frame.PutByte(CountAt, Count);
        frame.PutInt(BitsAt, Bits);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Setting = (SettingId)frame.GetByte(SettingAt);
        Index = frame.GetByte(IndexAt);
        Count = frame.GetByte(CountAt);
        Bits = frame.GetInt(BitsAt);
    }
}
