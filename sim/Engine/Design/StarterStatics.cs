using System.Collections.Generic;

namespace StarterCtl.Engine.Design;

/// <summary>One stage without its times.</summary>
/// <param name="CutoutVolts">Back-EMF at which the stage may be cut out at rated supply, V.</param>
/// <param name="CutoutRadPerSec">Speed at the cutout, rad/s; null without a machine constant.</param>
/// <param name="PeakAmps">Current just after the stage comes into effect, A.</param>
/// <param name="SwitchingAmps">Current just before it is cut out, A.</param>
/// <param name="VoltsLeft">What the controller holds, V.</param>
/// <param name="LoadAmps">Current that the load needs at the cutout speed, A; null without a machine constant.</param>
internal sealed record StageStatics(
    double CutoutVolts,
    double? CutoutRadPerSec,
    double PeakAmps,
    double SwitchingAmps,
    double VoltsLeft,
    double? LoadAmps)
{
    /// <summary>Back-EMF at which the lockout current lets the stage be cut out, V; null where its threshold is the later.</summary>
    public double? HeldToVolts { get; init; }

    /// <summary>Speed at the threshold, rad/s, where the lockout holds the cutout back; null: that of the cutout.</summary>
    public double? ThresholdRadPerSec { get; init; }
}

/// <summary>Every stage without its times.</summary>
/// <param name="Stages">In the order in which they are cut out.</param>
/// <param name="FinalPeakAmps">Current just after the last cutout, A.</param>
internal sealed record StarterStatics(IReadOnlyList<StageStatics> Stages, double FinalPeakAmps);
