using System;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The thresholds of a machine whose flux follows the armature current, with the numbers put in.</summary>
internal static class FluxThresholdDerivation
{
    /// <summary>What the sums below rest on.</summary>
    public static FormattableString Rule(DesignInput input) =>
        $"{Beginning(input)} That back-EMF is one of the flux at the small current. Just after the cutout the larger current changes the flux at once while the speed stays, so speed is what both sides of a cutout have in common, and the controller compares the back-EMF that the flux of the peak current would make: <var>k</var>(<var>I</var><sub>1</sub>) <var>w</var>. The volts left are those of this comparison.";

    /// <summary>The sums of one stage.</summary>
    public static FormattableString Step(DesignInput input, ArmatureFlux flux, StarterDesign design, int index)
    {
        DesignedStage stage = design.Stages[index];
        double driving = design.SupplyVolts - design.BrushDropVolts, speed = stage.CutoutRpm!.Value * Math.PI / 30;
        double next = StarterSection.NextOhms(design, index), after = StarterSection.NextPeakAmps(design, index);
        double atPeak = flux.ConstantAt(design.PeakAmps);
        if (stage.HeldToVolts is double held)
        {
            return $"<strong>Stage {stage.Stage}:</strong> <var>E</var><sub>{stage.Stage}</sub> = {Volts(stage.CutoutVolts)}, volts left = {Volts(stage.VoltsLeft)}; the lockout holds the cutout back until the current has fallen to {Amps(stage.SwitchingAmps)}, at a back-EMF of {driving} − {stage.SwitchingAmps} · {stage.TotalOhms} = {Volts(held)} and {Rpm(stage.CutoutRpm.Value)}; peak after = {Amps(after)}, for at that current the speed is ({driving} − {after} · {next}) / {flux.ConstantAt(after)} = {(driving - after * next) / flux.ConstantAt(after)} rad/s too";
        }

        string given = input.CutoutVolts != null ? ", as given" : "";
        return $"<strong>Stage {stage.Stage}:</strong> <var>E</var><sub>{stage.Stage}</sub> = <var>V</var> − <var>V</var><sub>b</sub> − <var>I</var> <var>R</var><sub>{stage.Stage}</sub> = {driving} − {stage.SwitchingAmps} · {stage.TotalOhms} = {Volts(stage.CutoutVolts)}{given}; speed = <var>E</var><sub>{stage.Stage}</sub> / <var>k</var>({Amps(stage.SwitchingAmps)}) = {stage.CutoutVolts} / {flux.ConstantAt(stage.SwitchingAmps)} = {speed} rad/s or {Rpm(stage.CutoutRpm.Value)}; volts left = <var>V</var> − <var>V</var><sub>b</sub> − <var>k</var>(<var>I</var><sub>1</sub>) <var>w</var> = {driving} − {atPeak} · {speed} = {Volts(stage.VoltsLeft)}; peak after = {Amps(after)}, for at that current the speed is ({driving} − {after} · {next}) / {flux.ConstantAt(after)} = {(driving - after * next) / flux.ConstantAt(after)} rad/s too";
    }

    private static string Beginning(DesignInput input)
    {
        if (input.CutoutVolts != null) return "The back-EMFs just before the cutouts are given by hand, at rated supply; current, speed and volts left follow from them.";
        return input.SectionOhms == null
            ? "A stage is cut out when the current has fallen to I₂ (or a little earlier where a warning says so). What that current leaves of the supply is back-EMF."
            : "With given sections a stage is cut out when the current has fallen to I₂ and the next peak stays within I₁, where these are given. What the current leaves of the supply is back-EMF.";
    }
}
