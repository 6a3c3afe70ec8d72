namespace StarterCtl.Engine.Runs;

/// <summary>What one sensor makes of what is there. In the unit of what it measures; the default is an ideal sensor.</summary>
public sealed record SensorChannel
{
    /// <summary>Reading over what is there, without unit.</summary>
    public double Gain { get; init; } = 1;

    /// <summary>Reading where there is nothing.</summary>
    public double Offset { get; init; }

    /// <summary>Noise behind the filter, one standard deviation, 0 or more.</summary>
    public double Noise { get; init; }

    /// <summary>Largest reading of either sign, above 0.</summary>
    public double Range { get; init; } = double.PositiveInfinity;
}
