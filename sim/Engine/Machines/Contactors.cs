namespace StarterCtl.Engine.Machines;

/// <summary>What every contactor of the panel does between its coil's command and its contacts.</summary>
/// <param name="ClosingSeconds">From command to contact closed, s, 0 or more.</param>
/// <param name="OpeningSeconds">From command to contact open, s, 0 or more.</param>
public sealed record Contactors(double ClosingSeconds, double OpeningSeconds)
{
    /// <summary>How often a main contact opens again after its first touch, 0 or more.</summary>
    public int BounceCount { get; init; }

    /// <summary>How long it stays open, and then closed, each time, s, above 0 where there is a bounce.</summary>
    public double BounceSeconds { get; init; }

    /// <summary>Part of its rated voltage from which a coil closes its contactor.</summary>
    public double PickUpRatio { get; init; } = 0.85;

    /// <summary>Part of its rated voltage below which a coil lets its contactor go; not above <see cref="PickUpRatio"/>.</summary>
    public double DropOutRatio { get; init; } = 0.5;

    /// <summary>Voltage of the arc between line or brake contacts that part with current, V, 0 or more; 0: the current is broken at once.</summary>
    public double ArcVolts { get; init; }

    /// <summary>From the command to the auxiliary contact, s: a bouncing contact is reported once it lies still.</summary>
    public double ReportedSeconds => ClosingSeconds + 2 * BounceCount * BounceSeconds;
}
