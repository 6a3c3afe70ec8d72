using System.Collections.Generic;
using StarterCtl.Engine;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a run. Extend, never rename. SI units except where the name says otherwise.</summary>
public sealed record RunJson(
    string Verdict,
    IReadOnlyList<LimitCheck> Checks,
    IReadOnlyList<Cutout> Cutouts,
    double PeakAmps,
    double PeakTorqueNewtonMetres,
    double? SecondsToSpeed,
    double FinalRpm,
    double FinalAmps,
    double RmsAmps,
    IReadOnlyList<double> SectionJoules,
    double ArmatureJoules,
    double BrushJoules,
    double SupplyJoules,
    double SourceJoules,
    double LoadJoules,
    double KineticJoules,
    double MagneticJoules,
    double ArcJoules,
    IReadOnlyList<PhaseEntry> Phases,
    IReadOnlyList<FaultEntry> Faults,
    IReadOnlyList<string> Warnings,
    string Case,
    string CaseSha256,
    string CoreVersion,
    string SettingsChecksum,
    double BrakeJoules,
    double FieldJoules,
    double FieldMagneticJoules,
    IReadOnlyList<BodyTemperature> Temperatures)
{
    /// <summary>The shape of a study.</summary>
    public static RunJson Of(StartStudy study)
    {
        RunResult result = study.Result;
        return new(
            study.Verdict.Word,
            study.Verdict.Checks,
            result.Cutouts,
            result.PeakAmps,
            result.PeakTorqueNewtonMetres,
            result.SecondsToSpeed,
            result.FinalRpm,
            result.FinalAmps,
            result.RmsAmps,
            result.SectionJoules,
            result.ArmatureJoules,
            result.BrushJoules,
            result.SupplyJoules,
            result.SourceJoules,
            result.LoadJoules,
            result.KineticJoules,
            result.MagneticJoules,
            result.ArcJoules,
            result.Phases,
            result.Faults,
            study.Warnings,
            study.CaseName,
            study.CaseSha256,
            CoreIdentity.Version,
            SettingsText.Checksum(study.Settings),
            result.BrakeJoules,
            result.FieldJoules,
            result.FieldMagneticJoules,
            result.Temperatures);
    }
}
