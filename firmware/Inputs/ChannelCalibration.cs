namespace StarterCtl.Firmware;

/// <summary>What turns the counts of one analogue channel into its unit: units = (counts - offset) times gain.</summary>
public sealed class ChannelCalibration
{
    /// <summary>Counts at zero of the quantity; between counts too.</summary>
    public float OffsetCounts;

    /// <summary>Units per count; not 0, negative where the sensor is mounted the other way round.</summary>
    public float UnitsPerCount;

    /// <summary>The quantity at a count.</summary>
    public float ToUnits(float counts) => (counts - OffsetCounts) * UnitsPerCount;
}
