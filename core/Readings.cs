namespace StarterCtl.Core;

/// <summary>One tick of inputs, as the board or the simulator measured them. Owned by the caller, reused every tick.</summary>
public sealed class Readings
{
    /// <summary>True when the board could not read on this tick, so that everything here is of an earlier one.</summary>
    public bool Stale;

    /// <summary>Voltage at the starter's input terminals, V, behind the source's own drop.</summary>
    public float SupplyVolts;

    /// <summary>Armature current, A. Negative while the machine generates.</summary>
    public float ArmatureAmps;

    /// <summary>Shaft speed, rad/s, positive in the direction of the start. Meaningless while <see cref="SpeedValid"/> is false.</summary>
    public float SpeedRadPerSec;

    /// <summary>True while the speed is known and fresh. A pick-up that timed out says false here, never zero speed.</summary>
    public bool SpeedValid;

    /// <summary>Auxiliary contact of the line contactor: true while its main contact is closed.</summary>
    public bool LineClosed;

    /// <summary>Auxiliary contacts of the stage contactors, bit 0 = stage 1; a set bit is a closed main contact.</summary>
    public int StagesClosed;

    /// <summary>Field current, A; meaningless where no field sensor is fitted.</summary>
    public float FieldAmps;

    /// <summary>Temperature of the starting resistor, degC; meaningless where no sensor is fitted.</summary>
    public float ResistorCelsius;

    /// <summary>Auxiliary contact of the brake contactor: true while its main contact is closed.</summary>
    public bool BrakeClosed;

    /// <summary>Auxiliary contact of the field contactor: true while its main contact is closed.</summary>
    public bool FieldClosed;

    /// <summary>Permissive inputs, bit 0 = input 1; a set bit is given.</summary>
    public int Permissives;

    /// <summary>Start input. Only its rising edge starts, and only in <see cref="Phase.Ready"/>.</summary>
    public bool StartPressed;

    /// <summary>Stop input. Wins over start in the same tick.</summary>
    public bool StopPressed;

    /// <summary>Reset input. Only its rising edge counts; it never starts anything.</summary>
    public bool ResetPressed;

    /// <summary>True while the hard-wired stop chain is open. Wins over everything.</summary>
    public bool EmergencyStop;
}
