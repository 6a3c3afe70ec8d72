namespace StarterCtl.Firmware;

/// <summary>What a pin is for. Numbers are published and never reused.</summary>
public enum PinRole
{
    /// <summary>Analogue: supply voltage, V.</summary>
    SupplyVolts = 0,

    /// <summary>Analogue: armature current, A, of either sign.</summary>
    ArmatureAmps = 1,

    /// <summary>Analogue: field current, A.</summary>
    FieldAmps = 2,

    /// <summary>Analogue: temperature of the starting resistor, degC.</summary>
    ResistorCelsius = 3,

    /// <summary>Analogue: tacho generator, rad/s.</summary>
    TachoRadPerSec = 4,

    /// <summary>Edges of the pick-up, or of the encoder's first track.</summary>
    SpeedEdges = 5,

    /// <summary>The encoder's second track; without it the speed has no direction.</summary>
    SpeedDirection = 6,

    /// <summary>Contact of the hard-wired stop chain; closed is healthy.</summary>
    StopChain = 7,

    /// <summary>Stop button, normally closed; open is pressed.</summary>
    StopButton = 8,

    /// <summary>Start button; closed is pressed.</summary>
    StartButton = 9,

    /// <summary>Reset button; closed is pressed.</summary>
    ResetButton = 10,

    /// <summary>Auxiliary contact of the line contactor; closed with its main contact.</summary>
    LineContact = 11,

    /// <summary>Auxiliary contact of the brake contactor.</summary>
    BrakeContact = 12,

    /// <summary>Auxiliary contact of the field contactor.</summary>
    FieldContact = 13,

    /// <summary>Coil of the line contactor.</summary>
    LineCoil = 14,

    /// <summary>Coil of the brake contactor.</summary>
    BrakeCoil = 15,

    /// <summary>Coil of the field contactor.</summary>
    FieldCoil = 16,

    /// <summary>Lamp: ready.</summary>
    ReadyLamp = 17,

    /// <summary>Lamp: running.</summary>
    RunningLamp = 18,

    /// <summary>Lamp: tripped; tells the start-up lock's reason by flashes.</summary>
    TrippedLamp = 19,

    /// <summary>Pulse to the watchdog outside the processor.</summary>
    Watchdog = 20,

    /// <summary>Switch at the machine; closed permits a start over the link.</summary>
    LinkPermit = 21,

    /// <summary>Auxiliary contact of the first stage contactor; those of the other stages follow by number.</summary>
    StageContact1 = 32,

    /// <summary>Coil of the first stage contactor; those of the other stages follow by number.</summary>
    StageCoil1 = 48,

    /// <summary>The first permissive input, closed is given; the others follow by number.</summary>
    Permissive1 = 64,
}
