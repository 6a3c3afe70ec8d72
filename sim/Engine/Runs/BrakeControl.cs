namespace StarterCtl.Engine.Runs;

/// <summary>What the controller knows of a dynamic brake. Times in microseconds.</summary>
public sealed record BrakeControl
{
    /// <summary>Brake resistor alone, ohm; 0 where the case has none, which the controller's check refuses.</summary>
    public double ResistorOhms { get; init; }

    /// <summary>Speed at which the brake is released, rad/s; above 0.</summary>
    public double ReleaseRadPerSec { get; init; }

    /// <summary>Time from the line proven open to the brake.</summary>
    public int DelayMicroseconds { get; init; }

    /// <summary>Longest braking, and longest wait for it.</summary>
    public int MaximumMicroseconds { get; init; } = 10_000_000;

    /// <summary>True when the brake contactor has an auxiliary contact.</summary>
    public bool HasContact { get; init; } = true;
}
