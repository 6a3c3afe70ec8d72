namespace StarterCtl.Firmware;

/// <summary>Asks for what was recorded of a channel. Body of <see cref="MessageId.ReadNoise"/>.</summary>
public sealed class NoiseRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 2;

    /// <summary>Offset of <see cref="Channel"/>.</summary>
    public const int ChannelAt = 0;

    /// <summary>Offset of <see cref="Situation"/>.</summary>
    public const int SituationAt = 1;

    /// <summary>Which channel.</summary>
    public CalibrationChannel Channel;

    /// <summary>In which situation; not none.</summary>
    public NoiseSituation Situation;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.ReadNoise, BodyBytes);
        frame.PutByte(ChannelAt, (int)Channel);
        frame.PutByte(SituationAt, (int)Situation);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Channel = (CalibrationChannel)frame.GetByte(ChannelAt);
        Situation = (NoiseSituation)frame.GetByte(SituationAt);
    }
}
