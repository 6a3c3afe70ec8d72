namespace StarterCtl.Engine.Machines;

/// <summary>What the plate says, and where the machine constant came from. What is null is not known.</summary>
public sealed record Plate
{
    /// <summary>Kind of machine as the case writes it.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Shaft power, W.</summary>
    public double? RatedWatts { get; init; }

    /// <summary>Rated armature voltage, V.</summary>
    public double? RatedVolts { get; init; }

    /// <summary>Rated armature current, A.</summary>
    public double? RatedAmps { get; init; }

    /// <summary>Rated speed, rad/s.</summary>
    public double? RatedRadPerSec { get; init; }

    /// <summary>Machine constant, V s/rad.</summary>
    public double? MachineConstant { get; init; }

    /// <summary>How the machine constant was found, with its numbers put in.</summary>
    public string ConstantSource { get; init; } = "";
}
