using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>What the controller made of it. Body of <see cref="MessageId.Exchanged"/>.</summary>
public sealed class ExchangeAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 26;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Phase"/>.</summary>
    public const int PhaseAt = 1;

    /// <summary>Offset of <see cref="Stage"/>.</summary>
    public const int StageAt = 2;

    /// <summary>Offset of <see cref="Reason"/>.</summary>
    public const int ReasonAt = 3;

    /// <summary>Offset of <see cref="Fault"/>.</summary>
    public const int FaultAt = 4;

    /// <summary>Offset of <see cref="Outputs"/>.</summary>
    public const int OutputsAt = 5;

    /// <summary>Offset of <see cref="CloseStages"/>.</summary>
    public const int CloseStagesAt = 6;

    /// <summary>Offset of <see cref="Ticks"/>.</summary>
    public const int TicksAt = 8;

    /// <summary>Offset of <see cref="BackEmfVolts"/>.</summary>
    public const int BackEmfVoltsAt = 10;

    /// <summary>Offset of <see cref="ResistiveBackEmfVolts"/>.</summary>
    public const int ResistiveBackEmfVoltsAt = 14;

    /// <summary>Offset of <see cref="ReasonQuantity"/>.</summary>
    public const int ReasonQuantityAt = 18;

    /// <summary>Offset of <see cref="ReasonLimit"/>.</summary>
    public const int ReasonLimitAt = 22;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Phase after the tick.</summary>
    public Phase Phase;

    /// <summary>Stage in effect.</summary>
    public int Stage;

    /// <summary>Why.</summary>
    public Reason Reason;

    /// <summary>Latched fault.</summary>
    public FaultId Fault;

    /// <summary>Coils, lamps and a mark.</summary>
    public ExchangeOutputs Outputs;

    /// <summary>Stage coils, bit 0 = stage 1.</summary>
    public int CloseStages;

    /// <summary>Control periods since the exchange before, this one included; stops at 65535.</summary>
    public int Ticks;

    /// <summary>Back-EMF from the speed, V.</summary>
    public float BackEmfVolts;

    /// <summary>Back-EMF from the voltage equation, V; see <see cref="ExchangeOutputs.ResistiveValid"/>.</summary>
    public float ResistiveBackEmfVolts;

    /// <summary>Number of the reason.</summary>
    public float ReasonQuantity;

    /// <summary>What it is held against.</summary>
    public float ReasonLimit;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Exchanged, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(PhaseAt, (int)Phase);
        frame.PutByte(StageAt, Stage);
        frame.PutByte(ReasonAt, (int)Reason);
        frame.PutByte(FaultAt, (int)Fault);
        frame.PutByte(OutputsAt, (int)Outputs);
        frame.PutShort(CloseStagesAt, CloseStages);
        frame.PutShort(TicksAt, Ticks);
        frame.PutFloat(BackEmfVoltsAt, BackEmfVolts);
        frame.PutFloat(ResistiveBackEmfVoltsAt, ResistiveBackEmfVolts);
        frame.PutFloat(ReasonQuantityAt, ReasonQuantity);
        frame.PutFloat(ReasonLimitAt, ReasonLimit);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Phase = (Phase)frame.GetByte(PhaseAt);
        Stage = frame.GetByte(StageAt);
        Reason = (Reason)frame.GetByte(ReasonAt);
        Fault = (FaultId)frame.GetByte(FaultAt);
        Outputs = (ExchangeOutputs)frame.GetByte(OutputsAt);
        CloseStages = frame.GetShort(CloseStagesAt);
        Ticks = frame.GetShort(TicksAt);
        BackEmfVolts = frame.GetFloat(BackEmfVoltsAt);
        ResistiveBackEmfVolts = frame.GetFloat(ResistiveBackEmfVoltsAt);
        ReasonQuantity = frame.GetFloat(ReasonQuantityAt);
        ReasonLimit = frame.GetFloat(ReasonLimitAt);
    }
}
