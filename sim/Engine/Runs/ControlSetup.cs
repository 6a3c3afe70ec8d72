namespace StarterCtl.Engine.Runs;

/// <summary>How the controller is set beyond what the design gives. Times in microseconds, currents in A.</summary>
public sealed record ControlSetup
{
    /// <summary>Control period, microseconds, 1 or more.</summary>
    public int PeriodMicroseconds { get; init; } = 1000;

    /// <summary>Time for which every condition of a cutout must hold.</summary>
    public int ConfirmMicroseconds { get; init; }

    /// <summary>Least time in a stage.</summary>
    public int MinimumDwellMicroseconds { get; init; }

    /// <summary>Longest time in a stage.</summary>
    public int MaximumStageMicroseconds { get; init; } = 10_000_000;

    /// <summary>Time within which a contact must follow its coil.</summary>
    public int ContactMicroseconds { get; init; } = 500_000;

    /// <summary>No cutout above this current, A; null: no lockout.</summary>
    public double? LockoutAmps { get; init; }

    /// <summary>Instantaneous trip, A.</summary>
    public double InstantTripAmps { get; init; }

    /// <summary>True when a turning shaft may be started.</summary>
    public bool SpinningStart { get; init; } = true;

    /// <summary>Field circuit; null: the machine has none.</summary>
    public FieldControl? Field { get; init; }

    /// <summary>What the flux follows; null: it is taken as constant.</summary>
    public FluxSetup? Flux { get; init; }

    /// <summary>Dynamic brake; null: none.</summary>
    public BrakeControl? Brake { get; init; }

    /// <summary>What the controller sees.</summary>
    public SensorSetup Sensors { get; init; } = new();

    /// <summary>What trips it beyond the above.</summary>
    public ProtectionSetup Protections { get; init; } = new();
}
