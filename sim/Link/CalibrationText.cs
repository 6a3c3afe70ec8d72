using StarterCtl.Engine;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>What came of a step of a calibration, in words, with what was found and what is allowed.</summary>
public static class CalibrationText
{
    private const int PerCent = 100;

    /// <summary>Why the last step was refused.</summary>
    public static string Of(BoardCalibration found) => found.Reason switch
    {
        CalibrationReason.Done => "done",
        CalibrationReason.NoSuchChannel => "the board has no such channel",
        CalibrationReason.NotBegun => "no calibration of this channel has been begun",
        CalibrationReason.Busy => "samples are being taken",
        CalibrationReason.NotAtRest => $"allowed only once every coil has been off and every contact open for {Seconds(CoilWatch.RestMicroseconds)} s",
        CalibrationReason.NotRead => "the board could not read the channel",
        CalibrationReason.AtRail => $"the signal is at an end of the converter's range (0 to {found.FullScaleCounts} counts): open wire, short, or too much of it",
        CalibrationReason.Noisy => $"the samples differ by {found.SpreadCounts} counts (allowed: {Part(found, CalibrationLimits.MostSpreadRatio)}): see the noise check",
        CalibrationReason.NoZero => "the zero comes first",
        CalibrationReason.SpanTooSmall =>
            $"the second point, {Text.Number(found.MeanCounts)} counts, is too near the zero at {Text.Number(found.New?.OffsetCounts ?? 0f)} (allowed: {Part(found, CalibrationLimits.LeastSpanRatio)} away or more)",
        CalibrationReason.UnusableValue => "the true value is 0 or no number",
        CalibrationReason.OffsetOutOfRange =>
            $"the offset is {Text.Number(found.MeanCounts)} counts (allowed: {Text.Number(found.Nominal.OffsetCounts)} and up to {Part(found, CalibrationLimits.OffsetRatio(found.Channel))} more or less): was it really zero?",
        CalibrationReason.GainOutOfRange =>
            $"the gain would be less than half or more than twice the nominal {Text.Number(found.Nominal.UnitsPerCount)} per count, or of the other sign: wrong true value, or wrong parts",
        CalibrationReason.NothingToSave => "both points are needed before anything is saved",
        CalibrationReason.NotStored => "the memory did not give back what was written; nothing has changed",
        CalibrationReason.NoSuchStep => "the board does not know this step",
        _ => $"reason {(int)found.Reason}, which this program does not know",
    };

    private static string Part(BoardCalibration found, float ratio) =>
        $"{Text.Number(ratio * PerCent)} % of the range, {Text.Number(ratio * found.FullScaleCounts)} counts";

    private static string Seconds(int microseconds) => Text.Number(microseconds * 1e-6);
}
