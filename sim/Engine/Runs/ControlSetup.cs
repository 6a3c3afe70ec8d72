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
}
