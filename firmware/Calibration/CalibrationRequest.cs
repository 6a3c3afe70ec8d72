namespace StarterCtl.Firmware;

/// <summary>Asks for a step of the calibration of a channel, and how it stands then. Body of <see cref="MessageId.Calibrate"/>.</summary>
public sealed class CalibrationRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 6;

    /// <summary>Offset of <see cref="Channel"/>.</summary>
    public const int ChannelAt = 0;

    /// <summary>Offset of <see cref="Step"/>.</summary>
    public const int StepAt = 1;

    /// <summary>Offset of <see cref="TrueUnits"/>.</summary>
    public const int TrueUnitsAt = 2;

    /// <summary>Which channel.</summary>
    public CalibrationChannel Channel;

    /// <summary>Which step.</summary>
    public CalibrationStep Step;

    /// <summary>What another instrument shows, in the unit of the channel; for the second point only.</summary>
    public float TrueUnits;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Calibrate, BodyBytes);
        frame.PutByte(ChannelAt, (int)Channel);
        frame.PutByte(StepAt, (int)Step);
        frame.PutFloat(TrueUnitsAt, TrueUnits);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        Channel = (CalibrationChannel)frame.GetByte(ChannelAt);
        Step = (CalibrationStep)frame.GetByte(StepAt);
        TrueUnits = frame.GetFloat(TrueUnitsAt);
    }
}
