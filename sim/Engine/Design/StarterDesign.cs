using System.Collections.Generic;

namespace StarterCtl.Engine.Design;

/// <summary>A designed starter.</summary>
/// <param name="SupplyVolts">Voltage at the starter's input terminals, V.</param>
/// <param name="ArmatureOhms">Armature-circuit resistance, ohm.</param>
/// <param name="BrushDropVolts">Drop of both brushes, V.</param>
/// <param name="PeakAmps">I1 that the design holds to, A.</param>
/// <param name="SwitchingAmps">I2 that the design uses, A.</param>
/// <param name="StageCount">Number of stages.</param>
/// <param name="StageCountExact">The count before rounding.</param>
/// <param name="FinalPeakAmps">Current just after the last cutout, A.</param>
/// <param name="Slack">How the slack was used; null for given sections.</param>
/// <param name="DirectStartAmps">What flows at standstill without a starter, A.</param>
/// <param name="Stages">The stages in the order in which they are cut out.</param>
/// <param name="Warnings">What a designer should look at.</param>
public sealed record StarterDesign(
    double SupplyVolts,
    double ArmatureOhms,
    double BrushDropVolts,
    double PeakAmps,
    double SwitchingAmps,
    int StageCount,
    double StageCountExact,
    double FinalPeakAmps,
    Slack? Slack,
    double DirectStartAmps,
    IReadOnlyList<DesignedStage> Stages,
    IReadOnlyList<string> Warnings)
{
    /// <summary>The largest current that any cutout of this design leads to, A; includes the excess of rounding the count.</summary>
    public double WorstPeakAmps
    {
        get
        {
            double worst = FinalPeakAmps;
            foreach (DesignedStage stage in Stages) worst = System.Math.Max(worst, stage.PeakAmps);
            return worst;
        }
    }
}
