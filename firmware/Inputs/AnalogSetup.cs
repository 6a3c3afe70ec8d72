namespace StarterCtl.Firmware;

/// <summary>How one analogue channel is read. Filled once, not changed afterwards but for its calibration.</summary>
public sealed class AnalogSetup
{
    /// <summary>Offset and gain.</summary>
    public ChannelCalibration Calibration = new ChannelCalibration();

    /// <summary>
    /// Least count that a sound sensor can give: above 0 counts for a sensor that rests near the lower rail, below its live zero for
    /// one that has one (4 mA). Fewer counts are an open wire, or a short to 0 V.
    /// </summary>
    public int LowestCounts;

    /// <summary>Largest count that a sound sensor can give; more are a short to the sensor's supply, or a clipped signal.</summary>
    public int HighestCounts;

    /// <summary>Samples of the median, 1, 3 or 5; 1 is no median.</summary>
    public int MedianSamples = 3;

    /// <summary>Time constant of the first-order filter, microseconds; 0 is no filter.</summary>
    public int FilterMicroseconds;

    /// <summary>Least quantity that the channel can show, in its unit.</summary>
    public float LowestUnits => Calibration.ToUnits(Calibration.UnitsPerCount < 0f ? HighestCounts : LowestCounts);

    /// <summary>Largest quantity that the channel can show, in its unit.</summary>
    public float HighestUnits => Calibration.ToUnits(Calibration.UnitsPerCount < 0f ? LowestCounts : HighestCounts);
}
