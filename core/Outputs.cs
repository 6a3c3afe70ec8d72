namespace StarterCtl.Core;

/// <summary>What the contactor coils and lamps are told. Written whole on every tick by <see cref="Interlock"/> alone.</summary>
public sealed class Outputs
{
    /// <summary>Coil of the line contactor.</summary>
    public bool CloseLine;

    /// <summary>Coils of the stage contactors, bit 0 = stage 1. Always a run of ones from bit 0.</summary>
    public int CloseStages;

    /// <summary>Coil of the brake contactor, which puts the brake resistor across the armature.</summary>
    public bool CloseBrake;

    /// <summary>Coil of the field contactor.</summary>
    public bool CloseField;

    /// <summary>Lamp: a press of start will be accepted.</summary>
    public bool ReadyLamp;

    /// <summary>Lamp: the start is complete and the motor runs on the full supply.</summary>
    public bool RunningLamp;

    /// <summary>Lamp: a fault is latched, or the settings failed their check.</summary>
    public bool TrippedLamp;

    /// <summary>De-energises every coil and puts out every lamp.</summary>
    public void AllOff()
    {
        CloseLine = false;
        CloseStages = 0;
        CloseBrake = false;
        CloseField = false;
        ReadyLamp = false;
        RunningLamp = false;
        TrippedLamp = false;
    }

    /// <summary>De-energises every coil; of the lamps only the tripped one may be lit.</summary>
    public void StayOff(bool trippedLamp)
    {
        AllOff();
        TrippedLamp = trippedLamp;
    }
}
