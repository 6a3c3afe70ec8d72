namespace StarterCtl.Firmware;

/// <summary>What a calibration may come to. All numbers: common practice, no source.</summary>
public static class CalibrationLimits
{
    /// <summary>Samples of a point, one per control period.</summary>
    public const int Samples = 256;

    /// <summary>Largest difference between two samples of a point, as a part of the range.</summary>
    public const float MostSpreadRatio = 0.02f;

    /// <summary>Least distance of the second point from the zero, as a part of the range.</summary>
    public const float LeastSpanRatio = 0.1f;

    /// <summary>Most distance of the offset from the nominal one, as a part of the range.</summary>
    public const float MostOffsetRatio = 0.1f;

    /// <summary>
    /// The same for a tacho generator: a shaft that coasts is as steady as one that stands, and would become the zero of every speed.
    /// </summary>
    public const float MostTachoOffsetRatio = 0.01f;

    /// <summary>Least gain, as a part of the nominal one.</summary>
    public const float LeastGainRatio = 0.5f;

    /// <summary>Largest gain, as a part of the nominal one.</summary>
    public const float MostGainRatio = 2f;

    /// <summary>Most distance of a channel's offset from the nominal one, as a part of the range.</summary>
    public static float OffsetRatio(CalibrationChannel channel) => channel == CalibrationChannel.TachoSpeed ? MostTachoOffsetRatio : MostOffsetRatio;

    /// <summary>Looks at an offset, counts.</summary>
    public static CalibrationReason CheckOffset(CalibratedChannel channel, float offsetCounts)
    {
        float distance = offsetCounts - channel.Nominal.OffsetCounts;
        float most = OffsetRatio(channel.Id) * channel.FullScaleCounts;
        return distance >= -most && distance <= most ? CalibrationReason.Done : CalibrationReason.OffsetOutOfRange;
    }

    /// <summary>Looks at a gain, units per count.</summary>
    public static CalibrationReason CheckGain(CalibratedChannel channel, float unitsPerCount)
    {
        // Without a division, and with both signs turned where the sensor is mounted the other way round.
        float nominal = channel.Nominal.UnitsPerCount;
        float sign = nominal < 0f ? -1f : 1f;
        bool isAllowed = sign * unitsPerCount >= LeastGainRatio * sign * nominal && sign * unitsPerCount <= MostGainRatio * sign * nominal && nominal != 0f;
        return isAllowed ? CalibrationReason.Done : CalibrationReason.GainOutOfRange;
    }

    /// <summary>True if both offset and gain of a pair are allowed.</summary>
    public static bool Allow(CalibratedChannel channel, ChannelCalibration pair) =>
        CheckOffset(channel, pair.OffsetCounts) == CalibrationReason.Done && CheckGain(channel, pair.UnitsPerCount) == CalibrationReason.Done;
}
