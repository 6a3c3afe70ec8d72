using System.Collections.Generic;
using StarterCtl.Sweeps.WorstCase;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a starter for the worst case. Extend, never rename. SI units except where the name says otherwise.</summary>
public sealed record WorstCaseJson(
    bool Verified,
    double LimitAmps,
    double PeakAmps,
    double PeakTorqueNewtonMetres,
    double SpareTorque,
    int Seed,
    IReadOnlyList<string> Decisive,
    long Corners,
    long? AllCorners,
    double ClimbedPeakAmps,
    double ClimbedSeconds,
    int TextbookStages,
    WorstPoint Chosen,
    WorstPoint Textbook)
{
    /// <summary>The shape of a choice.</summary>
    public static WorstCaseJson Of(WorstCaseChoice choice) => new(
        choice.IsVerified,
        choice.LimitAmps,
        choice.Chosen.PeakAmps,
        choice.PeakTorqueNewtonMetres,
        choice.SpareTorque,
        choice.Request.Seed,
        choice.Decisive,
        choice.Corners,
        choice.AllCorners,
        choice.ClimbedPeakAmps,
        choice.ClimbedSeconds,
        choice.TextbookStages,
        choice.Chosen,
        choice.Textbook);
}
