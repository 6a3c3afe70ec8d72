using System.Collections.Generic;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What a starter is worth over everything that may differ.</summary>
/// <param name="PeakAmps">The highest peak that any plant between the limits gives, A.</param>
/// <param name="Cutout">Number of the cutout behind which it flows, from 1; 0: when the line closes.</param>
/// <param name="Where">The values of that plant that matter: path, unit, value in SI and whether it is at a limit.</param>
/// <param name="TorqueRatio">Least torque over that of the load just before a cutout; 1 or less: the start sticks. Infinity without a load.</param>
/// <param name="TorqueStage">Its stage, from 1.</param>
/// <param name="Seen">What simulated starts came to, held against the same peak as the chosen design.</param>
/// <param name="Nominal">What a start of the nominal plant costs.</param>
public sealed record WorstPoint(
    double PeakAmps,
    int Cutout,
    IReadOnlyList<WorstValue> Where,
    double TorqueRatio,
    int TorqueStage,
    StartsSeen Seen,
    NominalCost Nominal);
