namespace StarterCtl.Firmware;

/// <summary>Asks for an echo. Body of <see cref="MessageId.Ping"/>.</summary>
public sealed class PingRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 4;

    /// <summary>Offset of <see cref="Echo"/>.</summary>
    public const int EchoAt = 0;

    /// <summary>Any number; it comes back.</summary>
    public int Echo;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Ping, BodyBytes);
        frame.PutInt(EchoAt, Echo);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Echo = frame.GetInt(EchoAt);
    }
}
