using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>What is unusual about a design. Usual ranges are common practice, no source.</summary>
internal static class DesignWarnings
{
    private const double LeastLoadMargin = 1.1;
    private const double MostPeakRatio = 2.5;

    /// <summary>Every warning, in the order of the design's own steps.</summary>
    public static IReadOnlyList<string> Of(DesignInput input, StarterDesign design)
    {
        List<string> warnings = [];
        if (input.MachineConstant == null && input.Flux == null) warnings.Add("Without motor.constant, construction data or a full plate the speeds, times and the check against the load are left out.");
        else if (input.InertiaKgM2 == null) warnings.Add("Without motor.inertia the expected times and energies are left out.");

        AddPeakWarnings(input, design, warnings);
        AddSwitchingWarnings(input, design, warnings);
        if (input.Flux != null) FluxWarnings.Add(input, input.Flux, design, warnings);
        AddTableWarning(input, warnings);
        AddBrakeWarning(input, design, warnings);
        return warnings;
    }

    // Without load a series machine runs away: there the load itself says where it goes.
    private static void AddTableWarning(DesignInput input, List<string> warnings)
    {
        if (input.Load.Table is not LoadTable table || (input.MachineConstant == null && input.Flux == null)) return;
        Characteristic alone = input.CharacteristicOn(input.ArmatureOhms);
        bool isSeries = input.Flux?.Law.FieldShare == 0;
        double rpm = (isSeries ? alone.Carrying(input.Load) : null)?.Rpm ?? alone.AtAmps(0).Rpm, lastRpm = table.LastRadPerSec * 30 / System.Math.PI;
        if (rpm <= lastRpm) return;
        warnings.Add($"The load table ends at {Text.Number(lastRpm)} r/min, and {(isSeries ? "with its load" : "without load")} the machine goes to {Text.Number(rpm)} r/min: beyond the table its last torque of {Text.Number(table.LastNewtonMetres)} N m is held.");
    }

    // The brake meets at most the back-EMF of the running machine: no load, no current, the whole supply less the brushes.
    private static void AddBrakeWarning(DesignInput input, StarterDesign design, List<string> warnings)
    {
        if (input.BrakeOhms is not double brakeOhms) return;
        double totalOhms = brakeOhms + design.ArmatureOhms;
        double amps = input.Flux == null
            ? (design.SupplyVolts - 2 * design.BrushDropVolts) / totalOhms
            : FluxWarnings.BrakeAmps(input.Flux, design, totalOhms);
        if (!StarterDesigner.Exceeds(amps, design.PeakAmps)) return;
        double volts = design.PeakAmps * totalOhms + design.BrushDropVolts;
        // The controller waits for the back-EMF that it sees without current.
        double? atRest = input.Flux?.ConstantAt(0) ?? input.MachineConstant;
        string below = atRest is double constant ? $" and {Text.Number(volts / constant * 30 / System.Math.PI)} r/min" : "";
        warnings.Add($"From full speed the brake would take {Text.Number(amps)} A through {Text.Number(totalOhms)} ohm, above the peak current of {Text.Number(design.PeakAmps)} A: it waits until the back-EMF has fallen to {Text.Number(volts)} V{below}.");
    }

    private static void AddPeakWarnings(DesignInput input, StarterDesign design, List<string> warnings)
    {
        double worst = design.WorstPeakAmps;
        double limit = input.PeakAmps ?? design.PeakAmps;
        if (StarterDesigner.Exceeds(worst, limit))
        {
            string cause = design.StageCountExact > design.StageCount && design.Slack != null
                ? $"{design.StageCount} stages are taken for {Text.Number(design.StageCountExact)}"
                : "the given sections or thresholds do not keep to it";
            warnings.Add($"The largest peak is {Text.Number(worst)} A, {Text.Number((worst / limit - 1) * 100)} % above the peak current of {Text.Number(limit)} A: {cause}.");
        }

        if (input.RatedAmps is double rated && design.PeakAmps > MostPeakRatio * rated)
        {
            warnings.Add($"The peak current is {Text.Number(design.PeakAmps / rated)} times the rated current; 1.5 to 2 is usual, 2.5 for short heavy starts.");
        }
    }

    private static void AddSwitchingWarnings(DesignInput input, StarterDesign design, List<string> warnings)
    {
        if (input.PeakAmps != null && input.SwitchingAmps is double asked && design.SwitchingAmps < asked * (1 - StageGrading.CountAllowance) && design.Slack == Slack.RaiseSwitchingCurrent)
        {
            warnings.Add($"With {design.StageCount} stages the switching current falls to {Text.Number(design.SwitchingAmps)} A instead of {Text.Number(asked)} A.");
        }

        DesignedStage? tight = design.Stages.FirstOrDefault(stage => stage.SwitchingAmps < LeastLoadMargin * stage.LoadAmps);
        if (tight != null)
        {
            warnings.Add($"Stage {tight.Stage} switches at {Text.Number(tight.SwitchingAmps)} A while the load takes {Text.Number(tight.LoadAmps!.Value)} A: less than 10 % to spare, so the stage may stick.");
        }
    }
}
