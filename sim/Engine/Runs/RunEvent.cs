namespace StarterCtl.Engine.Runs;

/// <summary>Something that happens to the machine or the panel at a time. What is null does not change.</summary>
/// <param name="AtSeconds">When, s from the start of the case; without meaning while the event waits for a condition.</param>
/// <param name="LoadTorqueNewtonMetres">New constant load torque, N m.</param>
/// <param name="SupplyVolts">New open-circuit voltage, V; 0 is a dead supply, into which the machine feeds.</param>
/// <param name="Command">What the operator does.</param>
public sealed record RunEvent(double AtSeconds, double? LoadTorqueNewtonMetres, double? SupplyVolts, OperatorCommand? Command)
{
    /// <summary>What the event waits for; null: its time.</summary>
    public EventCondition? When { get; init; }

    /// <summary>Line of the case file on which the event begins; 0 where there is none.</summary>
    public int Line { get; init; }

    /// <summary>New torque of a hoist's load, N m, above 0 against forward rotation.</summary>
    public double? HoistNewtonMetres { get; init; }

    /// <summary>Time over which constant torque, hoist torque and supply voltage change in a straight line, s; 0: at once.</summary>
    public double OverSeconds { get; init; }

    /// <summary>New moment of inertia of the load alone, kg m2, 0 or more.</summary>
    public double? LoadInertiaKgM2 { get; init; }

    /// <summary>New voltage of the field's own supply, V, 0 or more; 0 is a shorted supply, through which the current freewheels.</summary>
    public double? FieldSupplyVolts { get; init; }

    /// <summary>True breaks the field circuit beside its contactor, false mends it.</summary>
    public bool? FieldOpen { get; init; }

    /// <summary>What the speed pick-up gives from now on.</summary>
    public SpeedSignalState? SpeedSignal { get; init; }

    /// <summary>True jams the shaft: it stops within <see cref="ShaftJam.StopSeconds"/> and does not turn; false frees it.</summary>
    public bool? ShaftLocked { get; init; }

    /// <summary>A contactor that goes wrong, or is repaired.</summary>
    public ContactFault? ContactFault { get; init; }

    /// <summary>Voltage of every contactor's coil from now on, as a part of the rated one; 1 at the beginning.</summary>
    public double? CoilVoltageRatio { get; init; }

    /// <summary>The permissive inputs from now on, bit 0 = input 1; a set bit is given.</summary>
    public int? Permissives { get; init; }

    /// <summary>Factor between the armature current and what the controller reads; 1 is a sound sensor.</summary>
    public double? CurrentSensorGain { get; init; }

    /// <summary>Part of the speed pick-up's pulses that is lost from now on, 0 to 1.</summary>
    public double? MissingPulseRatio { get; init; }

    /// <summary>Pulses that come on top from now on, as a part of the pick-up's own, 0 or more.</summary>
    public double? ExtraPulseRatio { get; init; }

    /// <summary>What the starting resistor's temperature sensor reads from now on, degC, whatever its temperature is.</summary>
    public double? ResistorCelsius { get; init; }

    /// <summary>An analogue sensor that goes wrong, or is sound again.</summary>
    public SensorFault? SensorFault { get; init; }

    /// <summary>New temperature of the surroundings, degC.</summary>
    public double? AmbientCelsius { get; init; }

    /// <summary>True keeps all heat in windings and sections, false lets them cool again.</summary>
    public bool? CoolingBlocked { get; init; }
}
