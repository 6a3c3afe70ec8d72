using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Says whether a request was carried out. Body of <see cref="MessageId.Ack"/>.</summary>
public sealed class AckAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 5;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Request"/>.</summary>
    public const int RequestAt = 1;

    /// <summary>Offset of <see cref="Reason"/>.</summary>
    public const int ReasonAt = 2;

    /// <summary>Offset of <see cref="Setting"/>.</summary>
    public const int SettingAt = 3;

    /// <summary>Offset of <see cref="Problem"/>.</summary>
    public const int ProblemAt = 4;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>What was asked for.</summary>
    public MessageId Request;

    /// <summary>Why not.</summary>
    public LinkReason Reason;

    /// <summary>The setting that the reason speaks of; none where it speaks of no setting.</summary>
    public SettingId Setting;

    /// <summary>What is wrong with it, where <see cref="LinkReason.Contradiction"/> is the reason.</summary>
    public SettingProblem Problem;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Ack, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(RequestAt, (int)Request);
        frame.PutByte(ReasonAt, (int)Reason);
        frame.PutByte(SettingAt, (int)Setting);
        frame.PutByte(ProblemAt, (int)Problem);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Request = (MessageId)frame.GetByte(RequestAt);
        Reason = (LinkReason)frame.GetByte(ReasonAt);
        Setting = (SettingId)frame.GetByte(SettingAt);
        Problem = (SettingProblem)frame.GetByte(ProblemAt);
    }
}
