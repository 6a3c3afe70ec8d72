namespace StarterCtl.Firmware;

/// <summary>The echo, and how well the board hears; the counts go on at 0 behind 65535. Body of <see cref="MessageId.Pong"/>.</summary>
public sealed class PongAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 13;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Echo"/>.</summary>
    public const int EchoAt = 1;

    /// <summary>Offset of <see cref="WrongChecks"/>.</summary>
    public const int WrongChecksAt = 5;

    /// <summary>Offset of <see cref="OverlongFrames"/>.</summary>
    public const int OverlongFramesAt = 7;

    /// <summary>Offset of <see cref="BrokenFrames"/>.</summary>
    public const int BrokenFramesAt = 9;

    /// <summary>Offset of <see cref="LostFrames"/>.</summary>
    public const int LostFramesAt = 11;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>The number that was sent.</summary>
    public int Echo;

    /// <summary>Frames whose check was wrong.</summary>
    public int WrongChecks;

    /// <summary>Frames that were longer than any may be.</summary>
    public int OverlongFrames;

    /// <summary>Frames that were cut off or too short.</summary>
    public int BrokenFrames;

    /// <summary>Sequence numbers that were left out since the session began.</summary>
    public int LostFrames;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Pong, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutInt(EchoAt, Echo);
        frame.PutShort(WrongChecksAt, WrongChecks);
        frame.PutShort(OverlongFramesAt, OverlongFrames);
        frame.PutShort(BrokenFramesAt, BrokenFrames);
        frame.PutShort(LostFramesAt, LostFrames);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Echo = frame.GetInt(EchoAt);
        WrongChecks = frame.GetShort(WrongChecksAt);
        OverlongFrames = frame.GetShort(OverlongFramesAt);
        BrokenFrames = frame.GetShort(BrokenFramesAt);
        LostFrames = frame.GetShort(LostFramesAt);
    }
}
