using System;
using System.Linq;

namespace StarterCtl.Engine.Design;

/// <summary>Designs the sections and the cutout thresholds of a starter.</summary>
public static class StarterDesigner
{
    /// <summary>Most stages that the controller can switch.</summary>
    public const int MostStages = Core.Settings.MostStages;

    // One part in ten thousand: what printed figures round away is no excess.
    internal const double PeakRounding = 1e-4;

    /// <summary>Designs a starter.</summary>
    /// <param name="input">What is known and what is left open.</param>
    /// <returns>The design, with warnings for what is unusual.</returns>
    /// <exception cref="DesignException">No starter meets the input; names the quantity and what would mend it.</exception>
    public static StarterDesign Design(DesignInput input)
    {
        double drivingVolts = input.SupplyVolts - input.BrushDropVolts;
        if (drivingVolts <= 0)
        {
            throw new DesignException(DesignQuantity.BrushDrop, $"{Volts(input.BrushDropVolts)}", $"below the supply's {Volts(input.SupplyVolts)}");
        }

        double directAmps = drivingVolts / input.ArmatureOhms;
        GradingRule rule = GradingRule.Of(input);
        CheckLimits(input, rule, directAmps);
        StageCurrents currents = input.SectionOhms == null
            ? StageCurrents.Resolve(input, rule)
            : StageCurrents.OfSections(input, input.SectionOhms.Count);
        double[] totals = input.SectionOhms == null
            ? rule.Totals(currents.PeakAmps!.Value, currents.SwitchingAmps!.Value, currents.StageCount)
            : StageGrading.TotalsOf(input.SectionOhms, input.ArmatureOhms);
        StarterStatics statics = rule.Statics(totals, currents);
        DesignedStage[] stages = BuildStages(input, rule, totals, statics);
        foreach (DesignedStage stage in stages) CheckReachesCutout(input, stage);

        StarterDesign design = new(
            input.SupplyVolts,
            input.ArmatureOhms,
            input.BrushDropVolts,
            currents.PeakAmps ?? Math.Max(statics.FinalPeakAmps, stages.Max(stage => stage.PeakAmps)),
            currents.SwitchingAmps ?? stages.Min(stage => stage.SwitchingAmps),
            currents.StageCount,
            currents.ExactCount ?? currents.StageCount,
            statics.FinalPeakAmps,
            currents.Slack,
            directAmps,
            stages,
            []);
        return design with { Warnings = DesignWarnings.Of(input, design) };
    }

    private static void CheckLimits(DesignInput input, GradingRule rule, double directAmps)
    {
        if (input.PeakAmps is double peak)
        {
            if (peak >= directAmps)
            {
                throw new DesignException(
                    DesignQuantity.PeakCurrent,
                    $"{Amps(peak)}, which the motor alone does not pass: switched straight on it takes {Amps(directAmps)}, so 0 stages are needed",
                    $"below {Amps(directAmps)}; or no starter");
            }

            if (input.RatedAmps is double rated && peak < rated)
            {
                throw new DesignException(
                    DesignQuantity.PeakCurrent,
                    $"{Amps(peak)}, below the rated current of {Amps(rated)}: rated load would never start",
                    $"at least {Amps(rated)}; 1.5 to 2 times it is usual");
            }

            if (input.SwitchingAmps >= peak)
            {
                throw new DesignException(
                    DesignQuantity.SwitchingCurrent,
                    $"{Amps(input.SwitchingAmps.Value)}, not below the peak current of {Amps(peak)}",
                    $"below {Amps(peak)}");
            }

            rule.CheckLoadCanStart(peak);
        }

        CheckSwitchingAlone(input, directAmps);
        if (input.StageCount is < 1 or > MostStages)
        {
            throw new DesignException(DesignQuantity.Stages, $"{input.StageCount}", $"1 to {MostStages}");
        }
    }

    private static void CheckSwitchingAlone(DesignInput input, double directAmps)
    {
        if (input.PeakAmps == null && input.SwitchingAmps >= directAmps)
        {
            throw new DesignException(
                DesignQuantity.SwitchingCurrent,
                $"{Amps(input.SwitchingAmps.Value)}, which the motor alone does not pass: 0 stages are needed",
                $"below {Amps(directAmps)}; or no starter");
        }
    }

    private static DesignedStage[] BuildStages(DesignInput input, GradingRule rule, double[] totals, StarterStatics statics)
    {
        DesignedStage[] stages = new DesignedStage[statics.Stages.Count];
        double fromRadPerSec = 0, squaresBefore = 0;
        for (int i = 0; i < stages.Length; i++)
        {
            StageStatics stage = statics.Stages[i];
            (double Seconds, double SquareAmpSeconds)? timing = rule.Timing(totals[i], fromRadPerSec, stage);
            squaresBefore += timing?.SquareAmpSeconds ?? 0;
            double section = totals[i] - totals[i + 1];
            stages[i] = new DesignedStage(
                i + 1,
                totals[i],
                section,
                stage.CutoutVolts,
                stage.CutoutVolts / input.SupplyVolts,
                stage.CutoutRadPerSec * 30 / Math.PI,
                stage.PeakAmps,
                stage.SwitchingAmps,
                stage.VoltsLeft,
                stage.LoadAmps,
                timing?.Seconds,
                timing == null ? null : section * squaresBefore)
            {
                HeldToVolts = stage.HeldToVolts,
            };
            fromRadPerSec = stage.CutoutRadPerSec ?? 0;
        }

        return stages;
    }

    private static void CheckReachesCutout(DesignInput input, DesignedStage stage)
    {
        if (!(stage.LoadAmps >= stage.SwitchingAmps)) return;
        DesignQuantity quantity = input.CutoutVolts != null ? DesignQuantity.CutoutVoltages
            : input.SwitchingAmps != null ? DesignQuantity.SwitchingCurrent
            : input.StageCount != null ? DesignQuantity.Stages : DesignQuantity.PeakCurrent;
        string load = double.IsFinite(stage.LoadAmps.Value) ? $"takes {Amps(stage.LoadAmps.Value)}" : "takes more than the machine gives with any current";
        string above = double.IsFinite(stage.LoadAmps.Value) ? $"above {Amps(stage.LoadAmps.Value)}, better 10 % over it: raise the switching current, take more stages, or lighten the load during the start" : "a lighter load during the start, or a flux that falls less with the current";
        throw new DesignException(
            quantity,
            $"a switching current of {Amps(stage.SwitchingAmps)} in stage {stage.Stage}, but the load {load} at that stage's cutout speed of {Text.Number(stage.CutoutRpm ?? 0)} r/min: the stage would never end",
            above);
    }

    internal static bool Exceeds(double amps, double limitAmps) => amps > limitAmps * (1 + PeakRounding);

    private static string Amps(double amps) => Text.Number(amps) + " A";

    private static string Volts(double volts) => Text.Number(volts) + " V";
}
