using System;
using System.Collections.Generic;
using StarterCtl.Engine.Design;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>How every threshold was found, with the numbers put in.</summary>
internal static class ThresholdDerivation
{
    private const double SamePart = 1e-9;

    public static void Write(ReportPage page, DesignInput input, StarterDesign design)
    {
        page.Paragraph(input.Flux == null ? Rule(input) : FluxThresholdDerivation.Rule(input));
        List<FormattableString> steps = [];
        for (int i = 0; i < design.Stages.Count; i++)
        {
            if (input.Flux != null)
            {
                steps.Add(FluxThresholdDerivation.Step(input, input.Flux, design, i));
                continue;
            }

            DesignedStage stage = design.Stages[i];
            double next = StarterSection.NextOhms(design, i);
            steps.Add($"<strong>Stage {stage.Stage}:</strong> {Threshold(input, design, stage, next)}; {Consequence(input, stage, next)}");
        }

        page.Steps(steps);
    }

    private static FormattableString Rule(DesignInput input)
    {
        if (input.CutoutVolts != null) return $"The thresholds are given by hand, at rated supply. The volts left, the current before the cutout and the peak after it follow from them.";
        if (input.SectionOhms == null) return $"A stage is cut out when the current has fallen to <var>I</var><sub>2</sub>. That current through <var>R</var><sub>j</sub> leaves <var>I</var><sub>2</sub> <var>R</var><sub>j</sub> across the armature circuit; the rest of the supply is back-EMF. The same volts across the next, smaller resistance give the next peak.";
        return $"With given sections a stage is cut out when the current has fallen to <var>I</var><sub>2</sub> and the next peak stays within <var>I</var><sub>1</sub>, where these are given. The smaller of the two volts left decides.";
    }

    private static Markup Threshold(DesignInput input, StarterDesign design, DesignedStage stage, double next)
    {
        double driving = design.SupplyVolts - design.BrushDropVolts;
        if (input.CutoutVolts != null)
        {
            return ReportPage.Text($"<var>E</var><sub>{stage.Stage}</sub> = {Volts(stage.CutoutVolts)} as given; volts left = {design.SupplyVolts} − {design.BrushDropVolts} − {stage.CutoutVolts} = {Volts(stage.VoltsLeft)}");
        }

        // Whichever current gives the number is the one that is printed.
        if (input.SectionOhms != null && input.PeakAmps is double peak && Same(peak * next, stage.VoltsLeft) && !Same(design.SwitchingAmps * stage.TotalOhms, stage.VoltsLeft))
        {
            return ReportPage.Text($"the next peak decides: volts left = <var>I</var><sub>1</sub> <var>R</var><sub>{stage.Stage + 1}</sub> = {peak} · {next} = {Volts(stage.VoltsLeft)}; <var>E</var><sub>{stage.Stage}</sub> = <var>V</var> − <var>V</var><sub>b</sub> − volts left = {driving} − {stage.VoltsLeft} = {Volts(stage.CutoutVolts)}");
        }

        return ReportPage.Text($"<var>E</var><sub>{stage.Stage}</sub> = <var>V</var> − <var>V</var><sub>b</sub> − <var>I</var><sub>2</sub> <var>R</var><sub>{stage.Stage}</sub> = {design.SupplyVolts} − {design.BrushDropVolts} − {stage.SwitchingAmps} · {stage.TotalOhms} = {Volts(stage.CutoutVolts)}; volts left = {stage.SwitchingAmps} · {stage.TotalOhms} = {Volts(stage.VoltsLeft)}");
    }

    private static Markup Consequence(DesignInput input, DesignedStage stage, double next)
    {
        if (stage.HeldToVolts is not double held)
        {
            return ReportPage.Text($"current before = {stage.VoltsLeft} / {stage.TotalOhms} = {Amps(stage.SwitchingAmps)}, peak after = {stage.VoltsLeft} / {next} = {Amps(stage.VoltsLeft / next)}");
        }

        double left = input.LockoutAmps * stage.TotalOhms;
        return ReportPage.Text($"the lockout holds the cutout back until the current has fallen to {Amps(input.LockoutAmps)}, at a back-EMF of {Volts(held)}; peak after = {input.LockoutAmps} · {stage.TotalOhms} / {next} = {Amps(left / next)}");
    }

    private static bool Same(double one, double other) => Math.Abs(one - other) <= SamePart * Math.Abs(other);
}
