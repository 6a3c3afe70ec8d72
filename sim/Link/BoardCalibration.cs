using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>How a channel of a board and its calibration stand.</summary>
/// <param name="Channel">Which channel.</param>
/// <param name="State">How far its calibration has come.</param>
/// <param name="Reason">What came of the last step.</param>
/// <param name="InForce">What it measures by.</param>
/// <param name="Former">What it measured by before.</param>
/// <param name="New">What was taken; null before the zero is there.</param>
/// <param name="Nominal">What the data sheets say.</param>
/// <param name="MeanCounts">Mean of the samples of the last point.</param>
/// <param name="SpreadCounts">Their spread.</param>
/// <param name="FullScaleCounts">Largest count of the converter.</param>
public sealed record BoardCalibration(
    CalibrationChannel Channel, CalibrationState State, CalibrationReason Reason, OffsetAndGain InForce, OffsetAndGain Former, OffsetAndGain? New,
    OffsetAndGain Nominal, float MeanCounts, int SpreadCounts, int FullScaleCounts)
{
    internal bool IsTaking => State is CalibrationState.TakingZero or CalibrationState.TakingSpan;

    internal static BoardCalibration Of(CalibrationAnswer answer) => new(
        answer.Channel,
        answer.State,
        answer.Reason,
        new OffsetAndGain(answer.InForceOffsetCounts, answer.InForceUnitsPerCount),
        new OffsetAndGain(answer.FormerOffsetCounts, answer.FormerUnitsPerCount),
        answer.State >= CalibrationState.ZeroTaken ? new OffsetAndGain(answer.NewOffsetCounts, answer.NewUnitsPerCount) : null,
        new OffsetAndGain(answer.NominalOffsetCounts, answer.NominalUnitsPerCount),
        answer.MeanCounts,
        answer.SpreadCounts,
        answer.FullScaleCounts);
}
