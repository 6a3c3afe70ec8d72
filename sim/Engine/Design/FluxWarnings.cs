using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>What is unusual about a design whose flux changes with the armature current.</summary>
internal static class FluxWarnings
{
    /// <summary>Adds the warnings that only such a flux can have.</summary>
    public static void Add(DesignInput input, ArmatureFlux flux, StarterDesign design, List<string> warnings)
    {
        AddCurveEnd(flux, design, warnings);
        AddDifferential(flux, design, warnings);
        if (input.CutoutVolts != null || input.SectionOhms != null) return;
        AddEarlyCutout(design, warnings);
        AddEarlyRest(design, warnings);
    }

    /// <summary>Current of a brake at full speed without load, A; 0 without a field of its own.</summary>
    /// <remarks>The current turns round, and with it what a series winding adds; a series machine has no such speed.</remarks>
    public static double BrakeAmps(ArmatureFlux flux, StarterDesign design, double totalOhms)
    {
        if (flux.Law.ExcitingAmps(flux.FieldAmps, 0) <= 0) return 0;
        double drivingVolts = design.SupplyVolts - design.BrushDropVolts, constant = flux.ConstantAt(0);
        double VoltsOver(double amps) => drivingVolts * flux.ConstantAt(-amps) / constant - design.BrushDropVolts - amps * totalOhms;
        if (VoltsOver(0) <= 0) return 0;
        // No flux exceeds the last of the curve.
        double most = drivingVolts * flux.Law.Curve.Constants[^1] / constant / totalOhms;
        return FirstRoot.Find(VoltsOver, 0, most, isSingle: false) ?? most;
    }

    private static void AddCurveEnd(ArmatureFlux flux, StarterDesign design, List<string> warnings)
    {
        double excitingAmps = flux.Law.ExcitingAmps(flux.FieldAmps, design.PeakAmps), last = flux.Law.Curve.LastAmps;
        if (excitingAmps <= last) return;
        warnings.Add($"At the peak current of {Text.Number(design.PeakAmps)} A the exciting current is {Text.Number(excitingAmps)} A, but the magnetisation curve ends at {Text.Number(last)} A: beyond it the flux is taken to stay, which nobody measured.");
    }

    private static void AddDifferential(ArmatureFlux flux, StarterDesign design, List<string> warnings)
    {
        double atPeak = flux.ConstantAt(design.PeakAmps), atSwitching = flux.ConstantAt(design.SwitchingAmps);
        if (flux.Law.ArmatureShare >= 0 || atPeak >= atSwitching) return;
        warnings.Add($"The series winding works against the field: the machine constant is {Text.Number(atPeak)} V s/rad at the peak current of {Text.Number(design.PeakAmps)} A and {Text.Number(atSwitching)} V s/rad at the switching current of {Text.Number(design.SwitchingAmps)} A, so the torque is weakest where the start needs it most.");
    }

    private static void AddEarlyCutout(StarterDesign design, List<string> warnings)
    {
        foreach (DesignedStage stage in design.Stages)
        {
            if (!StarterDesigner.Exceeds(stage.SwitchingAmps, design.SwitchingAmps)) continue;
            warnings.Add($"Stage {stage.Stage} is cut out at {Text.Number(stage.SwitchingAmps)} A, before the switching current of {Text.Number(design.SwitchingAmps)} A: with the flux of the peak current the later speed would ask for more back-EMF than the supply gives.");
        }
    }

    // Both currents satisfy the equations at one speed, and so does one between them: the current stops there.
    private static void AddEarlyRest(StarterDesign design, List<string> warnings)
    {
        for (int cutout = 1; cutout <= design.StageCount; cutout++)
        {
            bool isLast = cutout == design.StageCount;
            if (isLast && design.Slack == Slack.LastSection) return;
            double amps = isLast ? design.FinalPeakAmps : design.Stages[cutout].PeakAmps;
            if (!StarterDesigner.Exceeds(design.PeakAmps, amps)) continue;
            warnings.Add($"Behind the cutout of stage {cutout} the current comes to rest at {Text.Number(amps)} A, below the peak current of {Text.Number(design.PeakAmps)} A: the flux falls so fast with it that both flow at the same speed.");
        }
    }
}
