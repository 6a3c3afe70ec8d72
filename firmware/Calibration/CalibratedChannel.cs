namespace StarterCtl.Firmware;

/// <summary>One analogue channel as calibration and noise check see it. The board fills it once, and its counts every control period.</summary>
public sealed class CalibratedChannel
{
    /// <summary>Which channel.</summary>
    public CalibrationChannel Id;

    /// <summary>Largest count of the converter, 4095 for 12 bits, at most 16777215; 0 where the channel is not fitted.</summary>
    public int FullScaleCounts;

    /// <summary>What the parts should give by their data sheets; its gain is not 0.</summary>
    public readonly ChannelCalibration Nominal = new ChannelCalibration();

    /// <summary>What the channel measures by.</summary>
    public readonly ChannelCalibration InForce = new ChannelCalibration();

    /// <summary>What it measured by before.</summary>
    public readonly ChannelCalibration Former = new ChannelCalibration();

    /// <summary>Counts of this control period, ahead of any filter; outside 0 to <see cref="FullScaleCounts"/> if they could not be read.</summary>
    public int Counts;

    /// <summary>True where there is such a channel.</summary>
    public bool IsFitted => FullScaleCounts > 0;

    /// <summary>True if the counts of this period are any.</summary>
    public bool IsRead => Counts >= 0 && Counts <= FullScaleCounts;
}
