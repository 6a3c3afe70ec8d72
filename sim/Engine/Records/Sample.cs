using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>One row of a record: the machine, what the controller saw, what it decided and why.</summary>
public record struct Sample
{
    /// <summary>Time since the start of the case, s; the power-up tick lies one period before 0.</summary>
    public double TimeSeconds { get; set; }

    /// <summary>Voltage at the starter's input terminals as read, V.</summary>
    public float SupplyVolts { get; set; }

    /// <summary>Armature current as read, A.</summary>
    public float ArmatureAmps { get; set; }

    /// <summary>Speed as read, rad/s.</summary>
    public float SpeedRadPerSec { get; set; }

    /// <summary>The controller's back-EMF from speed, V.</summary>
    public float BackEmfVolts { get; set; }

    /// <summary>The controller's back-EMF from the voltage equation, V; NaN while not valid.</summary>
    public float ResistiveBackEmfVolts { get; set; }

    /// <summary>True torque of the machine, N m.</summary>
    public double TorqueNewtonMetres { get; set; }

    /// <summary>True load torque, N m.</summary>
    public double LoadTorqueNewtonMetres { get; set; }

    /// <summary>Phase after the tick.</summary>
    public Phase Phase { get; set; }

    /// <summary>Stage in effect.</summary>
    public int Stage { get; set; }

    /// <summary>Reason of the tick.</summary>
    public Reason Reason { get; set; }

    /// <summary>Number of the reason.</summary>
    public float ReasonQuantity { get; set; }

    /// <summary>What it is held against.</summary>
    public float ReasonLimit { get; set; }

    /// <summary>Line coil.</summary>
    public bool CloseLine { get; set; }

    /// <summary>Line contact.</summary>
    public bool LineClosed { get; set; }

    /// <summary>Stage coils, bit 0 = stage 1.</summary>
    public int CloseStages { get; set; }

    /// <summary>Stage contacts, bit 0 = stage 1.</summary>
    public int StagesClosed { get; set; }

    /// <summary>Latched fault.</summary>
    public FaultId Fault { get; set; }

    /// <summary>Field current as read, A.</summary>
    public float FieldAmps { get; set; }

    /// <summary>Brake coil.</summary>
    public bool CloseBrake { get; set; }

    /// <summary>Brake contact.</summary>
    public bool BrakeClosed { get; set; }

    /// <summary>Field coil.</summary>
    public bool CloseField { get; set; }

    /// <summary>Field contact.</summary>
    public bool FieldClosed { get; set; }

    /// <summary>True while the speed is known.</summary>
    public bool SpeedValid { get; set; }

    /// <summary>True temperature of the armature winding, degC; NaN where it does not follow the run.</summary>
    public float ArmatureCelsius { get; set; }

    /// <summary>True temperature of the field winding, degC; NaN likewise.</summary>
    public float FieldCelsius { get; set; }

    /// <summary>True temperature of the hottest starter section, degC; NaN likewise.</summary>
    public float HottestSectionCelsius { get; set; }

    /// <summary>Time that the controller was told on this tick, microseconds; 0 on the tick at power-up.</summary>
    public int ElapsedMicroseconds { get; set; }

    /// <summary>True when the readings are of an earlier tick.</summary>
    public bool Stale { get; set; }

    /// <summary>Temperature of the starting resistor as read, degC.</summary>
    public float ResistorCelsius { get; set; }

    /// <summary>Permissive inputs, bit 0 = input 1.</summary>
    public int Permissives { get; set; }

    /// <summary>Start input.</summary>
    public bool StartPressed { get; set; }

    /// <summary>Stop input.</summary>
    public bool StopPressed { get; set; }

    /// <summary>Reset input.</summary>
    public bool ResetPressed { get; set; }

    /// <summary>Stop chain open.</summary>
    public bool EmergencyStop { get; set; }

    /// <summary>Lamp: a press of start will be accepted.</summary>
    public bool ReadyLamp { get; set; }

    /// <summary>Lamp: the start is complete.</summary>
    public bool RunningLamp { get; set; }

    /// <summary>Lamp: a fault is latched.</summary>
    public bool TrippedLamp { get; set; }
}
