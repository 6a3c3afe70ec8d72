using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>One row of a record: the machine, what the controller saw, what it decided and why.</summary>
public readonly record struct Sample
{
    /// <summary>Time since the start of the case, s; the power-up tick lies one period before 0.</summary>
    public required double TimeSeconds { get; init; }

    /// <summary>Voltage at the starter's input terminals as read, V.</summary>
    public required float SupplyVolts { get; init; }

    /// <summary>Armature current as read, A.</summary>
    public required float ArmatureAmps { get; init; }

    /// <summary>Speed as read, rad/s.</summary>
    public required float SpeedRadPerSec { get; init; }

    /// <summary>The controller's back-EMF from speed, V.</summary>
    public required float BackEmfVolts { get; init; }

    /// <summary>The controller's back-EMF from the voltage equation, V; NaN while not valid.</summary>
    public required float ResistiveBackEmfVolts { get; init; }

    /// <summary>True torque of the machine, N m.</summary>
    public required double TorqueNewtonMetres { get; init; }

    /// <summary>True load torque, N m.</summary>
    public required double LoadTorqueNewtonMetres { get; init; }

    /// <summary>Phase after the tick.</summary>
    public required Phase Phase { get; init; }

    /// <summary>Stage in effect.</summary>
    public required int Stage { get; init; }

    /// <summary>Reason of the tick.</summary>
    public required Reason Reason { get; init; }

    /// <summary>Number of the reason.</summary>
    public required float ReasonQuantity { get; init; }

    /// <summary>What it is held against.</summary>
    public required float ReasonLimit { get; init; }

    /// <summary>Line coil.</summary>
    public required bool CloseLine { get; init; }

    /// <summary>Line contact.</summary>
    public required bool LineClosed { get; init; }

    /// <summary>Stage coils, bit 0 = stage 1.</summary>
    public required int CloseStages { get; init; }

    /// <summary>Stage contacts, bit 0 = stage 1.</summary>
    public required int StagesClosed { get; init; }

    /// <summary>Latched fault.</summary>
    public required FaultId Fault { get; init; }

    /// <summary>Field current as read, A.</summary>
    public float FieldAmps { get; init; }

    /// <summary>Brake coil.</summary>
    public bool CloseBrake { get; init; }

    /// <summary>Brake contact.</summary>
    public bool BrakeClosed { get; init; }

    /// <summary>Field coil.</summary>
    public bool CloseField { get; init; }

    /// <summary>Field contact.</summary>
    public bool FieldClosed { get; init; }

    /// <summary>True while the speed is known.</summary>
    public bool SpeedValid { get; init; }

    /// <summary>True temperature of the armature winding, degC; NaN where it does not follow the run.</summary>
    public float ArmatureCelsius { get; init; }

    /// <summary>True temperature of the field winding, degC; NaN likewise.</summary>
    public float FieldCelsius { get; init; }

    /// <summary>True temperature of the hottest starter section, degC; NaN likewise.</summary>
    public float HottestSectionCelsius { get; init; }
}
