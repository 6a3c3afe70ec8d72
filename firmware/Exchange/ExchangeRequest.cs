namespace StarterCtl.Firmware;

/// <summary>What the simulated machine shows. Body of <see cref="MessageId.Exchange"/>.</summary>
public sealed class ExchangeRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 32;

    /// <summary>Offset of <see cref="ElapsedMicroseconds"/>.</summary>
    public const int ElapsedMicrosecondsAt = 0;

    /// <summary>Offset of <see cref="SupplyVolts"/>.</summary>
    public const int SupplyVoltsAt = 4;

    /// <summary>Offset of <see cref="ArmatureAmps"/>.</summary>
    public const int ArmatureAmpsAt = 8;

    /// <summary>Offset of <see cref="SpeedRadPerSec"/>.</summary>
    public const int SpeedRadPerSecAt = 12;

    /// <summary>Offset of <see cref="FieldAmps"/>.</summary>
    public const int FieldAmpsAt = 16;

    /// <summary>Offset of <see cref="ResistorCelsius"/>.</summary>
    public const int ResistorCelsiusAt = 20;

    /// <summary>Offset of <see cref="Permissives"/>.</summary>
    public const int PermissivesAt = 24;

    /// <summary>Offset of <see cref="StagesClosed"/>.</summary>
    public const int StagesClosedAt = 28;

    /// <summary>Offset of <see cref="Switches"/>.</summary>
    public const int SwitchesAt = 30;

    /// <summary>In lockstep the length of the control period that ends with these readings, microseconds; without meaning in real time.</summary>
    public int ElapsedMicroseconds;

    /// <summary>Voltage at the starter's input terminals, V.</summary>
    public float SupplyVolts;

    /// <summary>Armature current, A.</summary>
    public float ArmatureAmps;

    /// <summary>Shaft speed, rad/s.</summary>
    public float SpeedRadPerSec;

    /// <summary>Field current, A.</summary>
    public float FieldAmps;

    /// <summary>Temperature of the starting resistor, degC.</summary>
    public float ResistorCelsius;

    /// <summary>Permissive inputs, bit 0 = input 1.</summary>
    public int Permissives;

    /// <summary>Auxiliary contacts of the stages, bit 0 = stage 1.</summary>
    public int StagesClosed;

    /// <summary>Contacts, buttons and marks.</summary>
    public ExchangeSwitches Switches;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Exchange, BodyBytes);
        frame.PutInt(ElapsedMicrosecondsAt, ElapsedMicroseconds);
        frame.PutFloat(SupplyVoltsAt, SupplyVolts);
        frame.PutFloat(ArmatureAmpsAt, ArmatureAmps);
        frame.PutFloat(SpeedRadPerSecAt, SpeedRadPerSec);
        frame.PutFloat(FieldAmpsAt, FieldAmps);
        frame.PutFloat(ResistorCelsiusAt, ResistorCelsius);
        frame.PutInt(PermissivesAt, Permissives);
        frame.PutShort(StagesClosedAt, StagesClosed);
        frame.PutShort(SwitchesAt, (int)Switches);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        ElapsedMicroseconds = frame.GetInt(ElapsedMicrosecondsAt);
        SupplyVolts = frame.GetFloat(SupplyVoltsAt);
        ArmatureAmps = frame.GetFloat(ArmatureAmpsAt);
        SpeedRadPerSec = frame.GetFloat(SpeedRadPerSecAt);
        FieldAmps = frame.GetFloat(FieldAmpsAt);
        ResistorCelsius = frame.GetFloat(ResistorCelsiusAt);
        Permissives = frame.GetInt(PermissivesAt);
        StagesClosed = frame.GetShort(StagesClosedAt);
        Switches = (ExchangeSwitches)frame.GetShort(SwitchesAt);
    }
}
