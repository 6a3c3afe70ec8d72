using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Design;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a design. Extend, never rename. SI units except where the name says otherwise.</summary>
public sealed record DesignJson(
    double SupplyVolts,
    double ArmatureOhms,
    double BrushDropVolts,
    double? MachineConstant,
    double PeakAmps,
    double SwitchingAmps,
    int StageCount,
    double StageCountExact,
    double FinalPeakAmps,
    double DirectStartAmps,
    IReadOnlyList<StageJson> Stages,
    IReadOnlyList<string> Warnings,
    string CaseSha256)
{
    /// <summary>What the parts around a start must bear; null where the case has no key that asks for it.</summary>
    public RatingsJson? Ratings { get; init; }

    /// <summary>The bought parts; null where none were asked for.</summary>
    public PartsJson? Parts { get; init; }

    /// <summary>The worst case over the tolerances; null where it was not asked for.</summary>
    public WorstCaseJson? WorstCase { get; init; }

    /// <summary>The shape of a designed case.</summary>
    public static DesignJson Of(CaseDesign designed)
    {
        StarterDesign design = designed.Design;
        return new(
            design.SupplyVolts,
            design.ArmatureOhms,
            design.BrushDropVolts,
            designed.Plate.MachineConstant,
            design.PeakAmps,
            design.SwitchingAmps,
            design.StageCount,
            design.StageCountExact,
            design.FinalPeakAmps,
            design.DirectStartAmps,
            [.. design.Stages.Select(StageJson.Of)],
            designed.Warnings,
            designed.File.Sha256);
    }
}
