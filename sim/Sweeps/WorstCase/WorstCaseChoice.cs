using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>A starter chosen for the worst case, beside the one of the textbook.</summary>
/// <param name="Request">What was asked for.</param>
/// <param name="Designed">The case with the chosen sections and thresholds, designed.</param>
/// <param name="LimitAmps">The peak that the case allows, A.</param>
/// <param name="Chosen">What the chosen starter is worth.</param>
/// <param name="Textbook">What the case's own starter is worth, which knows nominal values only.</param>
/// <param name="TextbookStages">Its number of stages.</param>
public sealed record WorstCaseChoice(
    WorstCaseRequest Request,
    CaseDesign Designed,
    double LimitAmps,
    WorstPoint Chosen,
    WorstPoint Textbook,
    int TextbookStages)
{
    /// <summary>The case that carries the chosen starter.</summary>
    public CaseFile File => Designed.File;

    /// <summary>Highest torque of any plant, N m.</summary>
    public required double PeakTorqueNewtonMetres { get; init; }

    /// <summary>Part of the load's torque that was left over at each cutout; more than asked for where starts would have taken too long.</summary>
    public required double SpareTorque { get; init; }

    /// <summary>The quantities that move a cutout, the current behind it or the load.</summary>
    public required IReadOnlyList<string> Decisive { get; init; }

    /// <summary>Corners of these quantities that were looked at.</summary>
    public required long Corners { get; init; }

    /// <summary>Corners that they have; null: more than can be numbered.</summary>
    public required long? AllCorners { get; init; }

    /// <summary>Highest peak that a climb over simulated starts found, from the worst plant on, contactors and all else included, A.</summary>
    public required double ClimbedPeakAmps { get; init; }

    /// <summary>Longest time to the full supply that such a climb found, s.</summary>
    public required double ClimbedSeconds { get; init; }

    /// <summary>True when no stage sticks on any plant, no simulated start passed the bound and every one got to the full supply.</summary>
    public bool IsVerified => Chosen.TorqueRatio > 1 && Chosen.Seen is { Above: 0, Unfinished: 0 } && ClimbedPeakAmps <= Chosen.PeakAmps && double.IsFinite(ClimbedSeconds);
}
