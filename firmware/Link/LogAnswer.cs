using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>One event of the log. Body of <see cref="MessageId.LogEntry"/>.</summary>
public sealed class LogAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 16;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Index"/>.</summary>
    public const int IndexAt = 1;

    /// <summary>Offset of <see cref="Count"/>.</summary>
    public const int CountAt = 2;

    /// <summary>Offset of <see cref="Kind"/>.</summary>
    public const int KindAt = 3;

    /// <summary>Offset of <see cref="Number"/>.</summary>
    public const int NumberAt = 4;

    /// <summary>Offset of <see cref="Value"/>.</summary>
    public const int ValueAt = 8;

    /// <summary>Offset of <see cref="Seconds"/>.</summary>
    public const int SecondsAt = 12;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Which event; 0 = the oldest kept.</summary>
    public int Index;

    /// <summary>How many events the copy holds.</summary>
    public int Count;

    /// <summary>What it is about.</summary>
    public EventKind Kind;

    /// <summary>Its number; meaning in <see cref="EventKind"/>.</summary>
    public int Number;

    /// <summary>Its value; meaning in <see cref="EventKind"/>.</summary>
    public float Value;

    /// <summary>Its time since the controller was built, s.</summary>
    public int Seconds;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.LogEntry, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(IndexAt, Index);
        frame.PutByte(CountAt, Count);
        frame.PutByte(KindAt, (int)Kind);
        frame.PutInt(NumberAt, Number);
        frame.PutFloat(ValueAt, Value);
        frame.PutInt(SecondsAt, Seconds);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Index = frame.GetByte(IndexAt);
        Count = frame.GetByte(CountAt);
        Kind = (EventKind)frame.GetByte(KindAt);
        Number = frame.GetInt(NumberAt);
        Value = frame.GetFloat(ValueAt);
        Seconds = frame.GetInt(SecondsAt);
    }
}
