namespace StarterCtl.Firmware;

/// <summary>Offset and gain of a channel, and how far its calibration has come. Body of <see cref="MessageId.Calibration"/>.</summary>
public sealed class CalibrationAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 48;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Channel"/>.</summary>
    public const int ChannelAt = 1;

    /// <summary>Offset of <see cref="State"/>.</summary>
    public const int StateAt = 2;

    /// <summary>Offset of <see cref="Reason"/>.</summary>
    public const int ReasonAt = 3;

    /// <summary>Offset of <see cref="InForceOffsetCounts"/>.</summary>
    public const int InForceOffsetCountsAt = 4;

    /// <summary>Offset of <see cref="InForceUnitsPerCount"/>.</summary>
    public const int InForceUnitsPerCountAt = 8;

    /// <summary>Offset of <see cref="FormerOffsetCounts"/>.</summary>
    public const int FormerOffsetCountsAt = 12;

    /// <summary>Offset of <see cref="FormerUnitsPerCount"/>.</summary>
    public const int FormerUnitsPerCountAt = 16;

    /// <summary>Offset of <see cref="NewOffsetCounts"/>.</summary>
    public const int NewOffsetCountsAt = 20;

    /// <summary>Offset of <see cref="NewUnitsPerCount"/>.</summary>
    public const int NewUnitsPerCountAt = 24;

    /// <summary>Offset of <see cref="NominalOffsetCounts"/>.</summary>
    public const int NominalOffsetCountsAt = 28;

    /// <summary>Offset of <see cref="NominalUnitsPerCount"/>.</summary>
    public const int NominalUnitsPerCountAt = 32;

    /// <summary>Offset of <see cref="MeanCounts"/>.</summary>
    public const int MeanCountsAt = 36;

    /// <summary>Offset of <see cref="SpreadCounts"/>.</summary>
    public const int SpreadCountsAt = 40;

    /// <summary>Offset of <see cref="FullScaleCounts"/>.</summary>
    public const int FullScaleCountsAt = 44;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Which channel.</summary>
    public CalibrationChannel Channel;

    /// <summary>How far it has come.</summary>
    public CalibrationState State;

    /// <summary>What came of the last step.</summary>
    public CalibrationReason Reason;

    /// <summary>Offset that the channel measures by, counts.</summary>
    public float InForceOffsetCounts;

    /// <summary>Gain that it measures by.</summary>
    public float InForceUnitsPerCount;

    /// <summary>Offset before that, counts.</summary>
    public float FormerOffsetCounts;

    /// <summary>Gain before that.</summary>
    public float FormerUnitsPerCount;

    /// <summary>Offset that was taken, counts; 0 before there is one.</summary>
    public float NewOffsetCounts;

    /// <summary>Gain that was taken; 0 before there is one.</summary>
    public float NewUnitsPerCount;

    /// <summary>Offset by the data sheets, counts.</summary>
    public float NominalOffsetCounts;

    /// <summary>Gain by the data sheets.</summary>
    public float NominalUnitsPerCount;

    /// <summary>Mean of the samples of the last point, counts.</summary>
    public float MeanCounts;

    /// <summary>Their spread, counts.</summary>
    public int SpreadCounts;

    /// <summary>Largest count of the converter; 0 where the channel is not fitted.</summary>
    public int FullScaleCounts;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Calibration, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(ChannelAt, (int)Channel);
        frame.PutByte(StateAt, (int)State);
        frame.PutByte(ReasonAt, (int)Reason);
        frame.PutFloat(InForceOffsetCountsAt, InForceOffsetCounts);
        frame.PutFloat(InForceUnitsPerCountAt, InForceUnitsPerCount);
        frame.PutFloat(FormerOffsetCountsAt, FormerOffsetCounts);
        frame.PutFloat(FormerUnitsPerCountAt, FormerUnitsPerCount);
        frame.PutFloat(NewOffsetCountsAt, NewOffsetCounts);
        frame.PutFloat(NewUnitsPerCountAt, NewUnitsPerCount);
        frame.PutFloat(NominalOffsetCountsAt, NominalOffsetCounts);
        frame.PutFloat(NominalUnitsPerCountAt, NominalUnitsPerCount);
        frame.PutFloat(MeanCountsAt, MeanCounts);
        frame.PutInt(SpreadCountsAt, SpreadCounts);
        frame.PutInt(FullScaleCountsAt, FullScaleCounts);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Channel = (CalibrationChannel)frame.GetByte(ChannelAt);
        State = (CalibrationState)frame.GetByte(StateAt);
        Reason = (CalibrationReason)frame.GetByte(ReasonAt);
        InForceOffsetCounts = frame.GetFloat(InForceOffsetCountsAt);
        InForceUnitsPerCount = frame.GetFloat(InForceUnitsPerCountAt);
        FormerOffsetCounts = frame.GetFloat(FormerOffsetCountsAt);
        FormerUnitsPerCount = frame.GetFloat(FormerUnitsPerCountAt);
        NewOffsetCounts = frame.GetFloat(NewOffsetCountsAt);
        NewUnitsPerCount = frame.GetFloat(NewUnitsPerCountAt);
        NominalOffsetCounts = frame.GetFloat(NominalOffsetCountsAt);
        NominalUnitsPerCount = frame.GetFloat(NominalUnitsPerCountAt);
        MeanCounts = frame.GetFloat(MeanCountsAt);
        SpreadCounts = frame.GetInt(SpreadCountsAt);
        FullScaleCounts = frame.GetInt(FullScaleCountsAt);
    }
}
