namespace StarterCtl.Firmware;

/// <summary>What was recorded of a channel in a situation. Body of <see cref="MessageId.Noise"/>.</summary>
public sealed class NoiseAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 32;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Channel"/>.</summary>
    public const int ChannelAt = 1;

    /// <summary>Offset of <see cref="Situation"/>.</summary>
    public const int SituationAt = 2;

    /// <summary>Offset of <see cref="IsRecording"/>.</summary>
    public const int IsRecordingAt = 3;

    /// <summary>Offset of <see cref="Count"/>.</summary>
    public const int CountAt = 4;

    /// <summary>Offset of <see cref="Lowest"/>.</summary>
    public const int LowestAt = 8;

    /// <summary>Offset of <see cref="Highest"/>.</summary>
    public const int HighestAt = 12;

    /// <summary>Offset of <see cref="Mean"/>.</summary>
    public const int MeanAt = 16;

    /// <summary>Offset of <see cref="Variance"/>.</summary>
    public const int VarianceAt = 20;

    /// <summary>Offset of <see cref="LargestStep"/>.</summary>
    public const int LargestStepAt = 24;

    /// <summary>Offset of <see cref="FullScaleCounts"/>.</summary>
    public const int FullScaleCountsAt = 28;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Which channel.</summary>
    public CalibrationChannel Channel;

    /// <summary>In which situation.</summary>
    public NoiseSituation Situation;

    /// <summary>True while the recording goes on.</summary>
    public bool IsRecording;

    /// <summary>How many samples.</summary>
    public int Count;

    /// <summary>Smallest of them, counts.</summary>
    public int Lowest;

    /// <summary>Largest of them, counts.</summary>
    public int Highest;

    /// <summary>Their mean, counts.</summary>
    public float Mean;

    /// <summary>Square of their standard deviation, counts squared.</summary>
    public float Variance;

    /// <summary>Largest change from one control period to the next, counts.</summary>
    public int LargestStep;

    /// <summary>Largest count of the converter; 0 where the channel is not fitted.</summary>
    public int FullScaleCounts;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Noise, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(ChannelAt, (int)Channel);
        frame.PutByte(SituationAt, (int)Situation);
        frame.PutByte(IsRecordingAt, IsRecording ? 1 : 0);
        frame.PutInt(CountAt, Count);
        frame.PutInt(LowestAt, Lowest);
        frame.PutInt(HighestAt, Highest);
        frame.PutFloat(MeanAt, Mean);
        frame.PutFloat(VarianceAt, Variance);
        frame.PutInt(LargestStepAt, LargestStep);
        frame.PutInt(FullScaleCountsAt, FullScaleCounts);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Channel = (CalibrationChannel)frame.GetByte(ChannelAt);
        Situation = (NoiseSituation)frame.GetByte(SituationAt);
        IsRecording = frame.GetByte(IsRecordingAt) != 0;
        Count = frame.GetInt(CountAt);
        Lowest = frame.GetInt(LowestAt);
        Highest = frame.GetInt(HighestAt);
        Mean = frame.GetFloat(MeanAt);
        Variance = frame.GetFloat(VarianceAt);
        LargestStep = frame.GetInt(LargestStepAt);
        FullScaleCounts = frame.GetInt(FullScaleCountsAt);
    }
}
