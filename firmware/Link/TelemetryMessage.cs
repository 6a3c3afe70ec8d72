using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>One sample: what was read, decided and commanded on one control period. Body of <see cref="MessageId.Telemetry"/>.</summary>
public sealed class TelemetryMessage
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 48;

    /// <summary>Offset of <see cref="TimeMicroseconds"/>.</summary>
    public const int TimeMicrosecondsAt = 0;

    /// <summary>Offset of <see cref="DroppedSamples"/>.</summary>
    public const int DroppedSamplesAt = 4;

    /// <summary>Offset of <see cref="Phase"/>.</summary>
    public const int PhaseAt = 6;

    /// <summary>Offset of <see cref="Stage"/>.</summary>
    public const int StageAt = 7;

    /// <summary>Offset of <see cref="Reason"/>.</summary>
    public const int ReasonAt = 8;

    /// <summary>Offset of <see cref="Fault"/>.</summary>
    public const int FaultAt = 9;

    /// <summary>Offset of <see cref="Switches"/>.</summary>
    public const int SwitchesAt = 10;

    /// <summary>Offset of <see cref="CloseStages"/>.</summary>
    public const int CloseStagesAt = 12;

    /// <summary>Offset of <see cref="StagesClosed"/>.</summary>
    public const int StagesClosedAt = 14;

    /// <summary>Offset of <see cref="SupplyVolts"/>.</summary>
    public const int SupplyVoltsAt = 16;

    /// <summary>Offset of <see cref="ArmatureAmps"/>.</summary>
    public const int ArmatureAmpsAt = 20;

    /// <summary>Offset of <see cref="SpeedRadPerSec"/>.</summary>
    public const int SpeedRadPerSecAt = 24;

    /// <summary>Offset of <see cref="BackEmfVolts"/>.</summary>
    public const int BackEmfVoltsAt = 28;

    /// <summary>Offset of <see cref="ResistiveBackEmfVolts"/>.</summary>
    public const int ResistiveBackEmfVoltsAt = 32;

    /// <summary>Offset of <see cref="ReasonQuantity"/>.</summary>
    public const int ReasonQuantityAt = 36;

    /// <summary>Offset of <see cref="ReasonLimit"/>.</summary>
    public const int ReasonLimitAt = 40;

    /// <summary>Offset of <see cref="FieldAmps"/>.</summary>
    public const int FieldAmpsAt = 44;

    /// <summary>Time since the link was built, microseconds; goes on from the largest number to the smallest, once in 71.6 minutes.</summary>
    public int TimeMicroseconds;

    /// <summary>Samples left out since then because the line was busy; goes on at 0 behind 65535.</summary>
    public int DroppedSamples;

    /// <summary>Phase after the tick.</summary>
    public Phase Phase;

    /// <summary>Stage in effect, 0 to 17.</summary>
    public int Stage;

    /// <summary>Why.</summary>
    public Reason Reason;

    /// <summary>Latched fault.</summary>
    public FaultId Fault;

    /// <summary>Coils, contacts and marks.</summary>
    public TelemetrySwitches Switches;

    /// <summary>Stage coils, bit 0 = stage 1.</summary>
    public int CloseStages;

    /// <summary>Stage contacts, bit 0 = stage 1.</summary>
    public int StagesClosed;

    /// <summary>Voltage at the starter's input terminals as read, V.</summary>
    public float SupplyVolts;

    /// <summary>Armature current as read, A.</summary>
    public float ArmatureAmps;

    /// <summary>Speed as read, rad/s.</summary>
    public float SpeedRadPerSec;

    /// <summary>Back-EMF from the speed, V.</summary>
    public float BackEmfVolts;

    /// <summary>Back-EMF from the voltage equation, V; see <see cref="TelemetrySwitches.ResistiveValid"/>.</summary>
    public float ResistiveBackEmfVolts;

    /// <summary>Number of the reason.</summary>
    public float ReasonQuantity;

    /// <summary>What it is held against.</summary>
    public float ReasonLimit;

    /// <summary>Field current as read, A.</summary>
    public float FieldAmps;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Telemetry, BodyBytes);
        frame.PutInt(TimeMicrosecondsAt, TimeMicroseconds);
        frame.PutShort(DroppedSamplesAt, DroppedSamples);
        frame.PutByte(PhaseAt, (int)Phase);
        frame.PutByte(StageAt, Stage);
        frame.PutByte(ReasonAt, (int)Reason);
        frame.PutByte(FaultAt, (int)Fault);
        frame.PutShort(SwitchesAt, (int)Switches);
        frame.PutShort(CloseStagesAt, CloseStages);
        frame.PutShort(StagesClosedAt, StagesClosed);
        frame.PutFloat(SupplyVoltsAt, SupplyVolts);
        frame.PutFloat(ArmatureAmpsAt, ArmatureAmps);
        frame.PutFloat(SpeedRadPerSecAt, SpeedRadPerSec);
        frame.PutFloat(BackEmfVoltsAt, BackEmfVolts);
        frame.PutFloat(ResistiveBackEmfVoltsAt, ResistiveBackEmfVolts);
        frame.PutFloat(ReasonQuantityAt, ReasonQuantity);
        frame.PutFloat(ReasonLimitAt, ReasonLimit);
        frame.PutFloat(FieldAmpsAt, FieldAmps);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        TimeMicroseconds = frame.GetInt(TimeMicrosecondsAt);
        DroppedSamples = frame.GetShort(DroppedSamplesAt);
        Phase = (Phase)frame.GetByte(PhaseAt);
        Stage = frame.GetByte(StageAt);
        Reason = (Reason)frame.GetByte(ReasonAt);
        Fault = (FaultId)frame.GetByte(FaultAt);
        Switches = (TelemetrySwitches)frame.GetShort(SwitchesAt);
        CloseStages = frame.GetShort(CloseStagesAt);
        StagesClosed = frame.GetShort(StagesClosedAt);
        SupplyVolts = frame.GetFloat(SupplyVoltsAt);
        ArmatureAmps = frame.GetFloat(ArmatureAmpsAt);
        SpeedRadPerSec = frame.GetFloat(SpeedRadPerSecAt);
        BackEmfVolts = frame.GetFloat(BackEmfVoltsAt);
        ResistiveBackEmfVolts = frame.GetFloat(ResistiveBackEmfVoltsAt);
        ReasonQuantity = frame.GetFloat(ReasonQuantityAt);
        ReasonLimit = frame.GetFloat(ReasonLimitAt);
        FieldAmps = frame.GetFloat(FieldAmpsAt);
    }
}
