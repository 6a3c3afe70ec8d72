namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What is asked of a design for the worst case.</summary>
public sealed record WorstCaseRequest
{
    /// <summary>Most starts with which a design is verified.</summary>
    public const int MostStarts = 10_000_000;

    /// <summary>
    /// Part of the load's torque that must be left over when a stage is cut out, on the worst plant; 0.1 is common practice, no source. It is
    /// raised where starts would take too long.
    /// </summary>
    public double SpareTorque { get; init; } = 0.1;

    /// <summary>Starts with which the design is verified, 1 to <see cref="MostStarts"/>.</summary>
    public int Starts { get; init; } = 10_000;

    /// <summary>Seed of these starts, 0 to 1 000 000 000.</summary>
    public int Seed { get; init; } = 1;
}
