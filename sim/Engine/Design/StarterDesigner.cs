using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Design;

/// <summary>Designs the sections and the cutout thresholds of a starter at constant flux.</summary>
public static class StarterDesigner
{
    /// <summary>Most stages that the controller can switch.</summary>
    public const int MostStages = Core.Settings.MostStages;

    // One part in ten thousand: what printed figures round away is no excess.
    private const double PeakRounding = 1e-4;

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
        CheckLimits(input, directAmps);
        StageCurrents currents = input.SectionOhms == null
            ? StageCurrents.Resolve(input, drivingVolts)
            : StageCurrents.OfSections(input, input.SectionOhms.Count);
        double[] totals = input.SectionOhms == null
            ? StageGrading.Totals(drivingVolts, input.ArmatureOhms, currents.PeakAmps!.Value, currents.SwitchingAmps!.Value, currents.StageCount)
            : StageGrading.TotalsOf(input.SectionOhms, input.ArmatureOhms);
        double[] voltsLeft = input.CutoutVolts == null
            ? VoltsLeft(input, drivingVolts, totals, currents)
            : VoltsLeftByHand(input.CutoutVolts, drivingVolts, currents.StageCount);
        if (voltsLeft[0] >= drivingVolts) throw CutOutAtStandstill(totals, currents, drivingVolts);

        DesignedStage[] stages = BuildStages(input, drivingVolts, totals, voltsLeft);
        foreach (DesignedStage stage in stages) CheckReachesCutout(input, stage);

        double finalPeakAmps = voltsLeft[^1] / input.ArmatureOhms;
        StarterDesign design = new(
            input.SupplyVolts,
            input.ArmatureOhms,
            input.BrushDropVolts,
            currents.PeakAmps ?? Math.Max(finalPeakAmps, stages.Max(stage => stage.PeakAmps)),
            currents.SwitchingAmps ?? stages.Min(stage => stage.SwitchingAmps),
            currents.StageCount,
            currents.ExactCount ?? currents.StageCount,
            finalPeakAmps,
            currents.Slack,
            directAmps,
            stages,
            []);
        return design with { Warnings = DesignWarnings.Of(input, design) };
    }

    private static void CheckLimits(DesignInput input, double directAmps)
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

            CheckLoadCanStart(input, peak);
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

    private static void CheckLoadCanStart(DesignInput input, double peakAmps)
    {
        if (input.MachineConstant is not double k) return;
        double breakawayAmps = input.Load.TorqueAt(0) / k;
        if (peakAmps <= breakawayAmps)
        {
            throw new DesignException(
                DesignQuantity.PeakCurrent,
                $"{Amps(peakAmps)}, but the load needs {Amps(breakawayAmps)} to turn at all",
                $"above {Amps(breakawayAmps)}, or a lighter load at the start");
        }
    }

    // Real parts with both limits: the later of the two cutouts holds, fallen to I2 and the next peak within I1. Where the
    // load would hold the machine before the later one, I2 decides, and the peak that follows is warned of.
    private static double[] VoltsLeft(DesignInput input, double drivingVolts, double[] totals, StageCurrents currents)
    {
        double[] left = new double[currents.StageCount];
        for (int i = 0; i < left.Length; i++)
        {
            double bySwitching = currents.SwitchingAmps * totals[i] ?? double.PositiveInfinity;
            double byPeak = currents.AreSectionsGiven && currents.PeakAmps is double peak ? peak * totals[i + 1] : double.PositiveInfinity;
            bool isHeldBefore = currents.SwitchingAmps != null && byPeak / totals[i] <= LoadAmpsAt(input, drivingVolts - byPeak);
            left[i] = isHeldBefore ? bySwitching : Math.Min(bySwitching, byPeak);
        }

        return left;
    }

    private static double LoadAmpsAt(DesignInput input, double backEmfVolts) =>
        input.MachineConstant is double k ? input.Load.TorqueAt(Math.Max(0, backEmfVolts) / k) / k : 0;

    // Computed sections cannot come to this: they begin at V/I1, and I2 is below I1.
    private static DesignException CutOutAtStandstill(double[] totals, StageCurrents currents, double drivingVolts)
    {
        if (currents.SwitchingAmps is double switching && switching * totals[0] >= drivingVolts)
        {
            return new DesignException(
                DesignQuantity.Sections,
                $"{Text.Number(totals[0])} ohm in stage 1, which passes {Amps(drivingVolts / totals[0])} at standstill, not above the switching current of {Amps(switching)}: the stage would be cut out at once",
                $"below {Text.Number(drivingVolts / switching)} ohm in all, armature included; or a lower switching current");
        }

        return new DesignException(
            DesignQuantity.Sections,
            $"a first section without which {Text.Number(totals[1])} ohm pass {Amps(drivingVolts / totals[1])} at standstill, not above the peak current of {Amps(currents.PeakAmps!.Value)}: the stage would be cut out at once",
            $"below {Text.Number(drivingVolts / currents.PeakAmps.Value)} ohm without the first section; or one section less");
    }

    private static double[] VoltsLeftByHand(IReadOnlyList<double> cutoutVolts, double drivingVolts, int stageCount)
    {
        if (cutoutVolts.Count != stageCount)
        {
            throw new DesignException(DesignQuantity.CutoutVoltages, $"{cutoutVolts.Count} thresholds", $"{stageCount}, one for each stage");
        }

        for (int i = 0; i < stageCount; i++)
        {
            if (cutoutVolts[i] >= drivingVolts)
            {
                throw new DesignException(
                    DesignQuantity.CutoutVoltages,
                    $"{Volts(cutoutVolts[i])} for stage {i + 1}, which no back-EMF reaches",
                    $"below supply less brush drop, {Volts(drivingVolts)}");
            }

            if (cutoutVolts[i] <= 0)
            {
                throw new DesignException(DesignQuantity.CutoutVoltages, $"{Volts(cutoutVolts[i])} for stage {i + 1}, which would be cut out at standstill", "above 0 V");
            }

            if (i > 0 && cutoutVolts[i] <= cutoutVolts[i - 1])
            {
                throw new DesignException(
                    DesignQuantity.CutoutVoltages,
                    $"{Volts(cutoutVolts[i])} for stage {i + 1}, not above the {Volts(cutoutVolts[i - 1])} of stage {i}",
                    "thresholds that rise from stage to stage");
            }
        }

        return [.. cutoutVolts.Select(volts => drivingVolts - volts)];
    }

    private static DesignedStage[] BuildStages(DesignInput input, double drivingVolts, double[] totals, double[] voltsLeft)
    {
        DesignedStage[] stages = new DesignedStage[voltsLeft.Length];
        double leftBefore = drivingVolts, squaresBefore = 0;
        for (int i = 0; i < stages.Length; i++)
        {
            double cutoutVolts = drivingVolts - voltsLeft[i];
            double? speed = cutoutVolts / input.MachineConstant;
            (double Seconds, double SquareAmpSeconds)? timing = null;
            if (input.MachineConstant is double k && input.InertiaKgM2 is double inertia)
            {
                timing = StageTiming.Of(drivingVolts, totals[i], k, inertia, input.Load, (drivingVolts - leftBefore) / k, cutoutVolts / k);
                squaresBefore += timing.Value.SquareAmpSeconds;
            }

            double section = totals[i] - totals[i + 1];
            stages[i] = new DesignedStage(
                i + 1,
                totals[i],
                section,
                cutoutVolts,
                cutoutVolts / input.SupplyVolts,
                speed * 30 / Math.PI,
                leftBefore / totals[i],
                voltsLeft[i] / totals[i],
                voltsLeft[i],
                input.Load.TorqueAt(speed ?? 0) / input.MachineConstant,
                timing?.Seconds,
                timing == null ? null : section * squaresBefore);
            leftBefore = voltsLeft[i];
        }

        return stages;
    }

    private static void CheckReachesCutout(DesignInput input, DesignedStage stage)
    {
        if (!(stage.LoadAmps >= stage.SwitchingAmps)) return;
        DesignQuantity quantity = input.CutoutVolts != null ? DesignQuantity.CutoutVoltages
            : input.SwitchingAmps != null ? DesignQuantity.SwitchingCurrent
            : input.StageCount != null ? DesignQuantity.Stages : DesignQuantity.PeakCurrent;
        throw new DesignException(
            quantity,
            $"a switching current of {Amps(stage.SwitchingAmps)} in stage {stage.Stage}, but the load takes {Amps(stage.LoadAmps.Value)} at that stage's cutout speed of {Text.Number(stage.CutoutRpm ?? 0)} r/min: the stage would never end",
            $"above {Amps(stage.LoadAmps.Value)}, better 10 % over it: raise the switching current, take more stages, or lighten the load during the start");
    }

    internal static bool Exceeds(double amps, double limitAmps) => amps > limitAmps * (1 + PeakRounding);

    private static string Amps(double amps) => Text.Number(amps) + " A";

    private static string Volts(double volts) => Text.Number(volts) + " V";
}
