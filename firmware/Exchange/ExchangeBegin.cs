namespace StarterCtl.Firmware;

/// <summary>Puts a machine that is simulated elsewhere in the place of the board's inputs and outputs. Body of <see cref="MessageId.BeginExchange"/>.</summary>
public sealed class ExchangeBegin
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 5;

    /// <summary>Offset of <see cref="SilenceMicroseconds"/>.</summary>
    public const int SilenceMicrosecondsAt = 0;

    /// <summary>Offset of <see cref="Mode"/>.</summary>
    public const int ModeAt = 4;

    /// <summary>Time without an exchange behind which the board ends it all by itself, microseconds, <see cref="ExchangePort.ShortestSilenceMicroseconds"/> to <see cref="ExchangePort.LongestSilenceMicroseconds"/>.</summary>
    public int SilenceMicroseconds;

    /// <summary>Who keeps the time.</summary>
    public ExchangeMode Mode;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.BeginExchange, BodyBytes);
        frame.PutInt(SilenceMicrosecondsAt, SilenceMicroseconds);
        frame.PutByte(ModeAt, (int)Mode);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        SilenceMicroseconds = frame.GetInt(SilenceMicrosecondsAt);
        Mode = (ExchangeMode)frame.GetByte(ModeAt);
    }
}
