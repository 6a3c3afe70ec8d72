namespace StarterCtl.Engine.Cases;

/// <summary>Something that happens to the drive during a run. What is null does not change.</summary>
/// <param name="AtSeconds">Time since the run began, s; 0 or more; infinity where the event waits for a condition.</param>
/// <param name="LoadTorqueNewtonMetres">New constant load torque, N m; 0 or more.</param>
/// <param name="SupplyVolts">New open-circuit supply voltage, V; 0 or more.</param>
/// <param name="Command">What the operator does, one of the choices of <see cref="CaseKeys.EventCommand"/>.</param>
/// <param name="Line">Line on which the event begins.</param>
public sealed record CaseEvent(
    double AtSeconds, double? LoadTorqueNewtonMetres, double? SupplyVolts, string? Command, int Line)
{
    /// <summary>The file of <see cref="Line"/>.</summary>
    public required string FileName { get; init; }

    /// <summary>The condition of <see cref="CaseKeys.EventWhenSpeedAbove"/>, rad/s.</summary>
    public double? WhenSpeedAbove { get; init; }

    /// <summary>The condition of <see cref="CaseKeys.EventWhenSpeedBelow"/>, rad/s.</summary>
    public double? WhenSpeedBelow { get; init; }

    /// <summary>The condition of <see cref="CaseKeys.EventWhenStage"/>.</summary>
    public int? WhenStage { get; init; }

    /// <summary>Time from the condition to the event, s.</summary>
    public double AfterSeconds { get; init; }

    /// <summary>New torque of a hoist's load, N m.</summary>
    public double? HoistNewtonMetres { get; init; }

    /// <summary>Time over which torques and supply voltage change, s; 0: at once.</summary>
    public double OverSeconds { get; init; }

    /// <summary>New moment of inertia of the load, kg m2; 0 or more.</summary>
    public double? LoadInertiaKgM2 { get; init; }

    /// <summary>New voltage of the field's own supply, V; 0 or more.</summary>
    public double? FieldSupplyVolts { get; init; }

    /// <summary>Field circuit, one of the choices of <see cref="CaseKeys.EventField"/>.</summary>
    public string? Field { get; init; }

    /// <summary>Speed signal, one of the choices of <see cref="CaseKeys.EventSpeedSignal"/>.</summary>
    public string? SpeedSignal { get; init; }

    /// <summary>Shaft, one of the choices of <see cref="CaseKeys.EventShaft"/>.</summary>
    public string? Shaft { get; init; }

    /// <summary>Contactor, one of the choices of <see cref="CaseKeys.EventContact"/>; there exactly when <see cref="ContactFault"/> is.</summary>
    public string? Contact { get; init; }

    /// <summary>Its state, one of the choices of <see cref="CaseKeys.EventContactFault"/>.</summary>
    public string? ContactFault { get; init; }

    /// <summary>Voltage of the coils as a part of the rated one.</summary>
    public double? CoilVoltage { get; init; }

    /// <summary>How many permissive inputs are given, counted from the first.</summary>
    public int? Permissives { get; init; }

    /// <summary>What the current sensor reads over what flows.</summary>
    public double? CurrentGain { get; init; }

    /// <summary>Part of the pick-up's pulses that is lost.</summary>
    public double? MissingPulses { get; init; }

    /// <summary>Pulses on top, as a part of the pick-up's own.</summary>
    public double? ExtraPulses { get; init; }

    /// <summary>Temperature of the starting resistor, degC.</summary>
    public double? ResistorCelsius { get; init; }

    /// <summary>Sensor, one of the choices of <see cref="CaseKeys.EventSensor"/>; there exactly when <see cref="SensorFault"/> is.</summary>
    public string? Sensor { get; init; }

    /// <summary>Its state, one of the choices of <see cref="CaseKeys.EventSensorFault"/>.</summary>
    public string? SensorFault { get; init; }

    /// <summary>New temperature of the surroundings, degC.</summary>
    public double? AmbientCelsius { get; init; }

    /// <summary>Cooling, one of the choices of <see cref="CaseKeys.EventCooling"/>.</summary>
    public string? Cooling { get; init; }
}
