namespace StarterCtl.Firmware;

/// <summary>Asks for one event of the log. Body of <see cref="MessageId.ReadLog"/>.</summary>
public sealed class LogRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 1;

    /// <summary>Offset of <see cref="Index"/>.</summary>
    public const int IndexAt = 0;

    /// <summary>0 = the oldest kept; 0 also takes the copy of the log that the others are read from.</summary>
    public int Index;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.ReadLog, BodyBytes);
        frame.PutByte(IndexAt, Index);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Index = frame.GetByte(IndexAt);
    }
}
