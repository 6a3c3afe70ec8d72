namespace StarterCtl.Engine.Runs;

/// <summary>What the sensors of a run make of what is there.</summary>
public sealed record SensorModel
{
    /// <summary>Armature current, A.</summary>
    public SensorChannel Current { get; init; } = new();

    /// <summary>Supply voltage, V.</summary>
    public SensorChannel Voltage { get; init; } = new();

    /// <summary>Speed, rad/s, where it is measured continuously.</summary>
    public SensorChannel Speed { get; init; } = new();

    /// <summary>Bits of the converter over each finite range, from minus to plus the range; 0: no steps.</summary>
    public int Bits { get; init; }

    /// <summary>Time constant of the first-order filter before the converter, s, 0 or more.</summary>
    public double FilterSeconds { get; init; }

    /// <summary>Number from which all noise follows: the same seed gives the same readings.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Pulses of the speed pick-up in one revolution; 0: the speed is measured continuously.</summary>
    public int PulsesPerRevolution { get; init; }

    /// <summary>Time without a pulse after which the speed is unknown, s, above 0.</summary>
    public double PulseTimeoutSeconds { get; init; } = 0.1;
}
