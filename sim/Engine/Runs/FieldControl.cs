namespace StarterCtl.Engine.Runs;

/// <summary>What the controller knows of a field circuit. Times in microseconds.</summary>
public sealed record FieldControl
{
    /// <summary>True when the controller switches the field.</summary>
    public bool HasContactor { get; init; }

    /// <summary>True when the field contactor has an auxiliary contact.</summary>
    public bool HasContact { get; init; }

    /// <summary>True when the field current is measured.</summary>
    public bool IsMeasured { get; init; }

    /// <summary>Least field current with which the armature may be live, A; 0 is off.</summary>
    public double MinimumAmps { get; init; }

    /// <summary>Time for which the field must stand before the line closes.</summary>
    public int BuildMicroseconds { get; init; }

    /// <summary>Time within which the field must stand.</summary>
    public int MaximumMicroseconds { get; init; } = 5_000_000;
}
