using System;
using System.Collections.Generic;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The stage totals of a machine whose flux follows the armature current, with the numbers put in.</summary>
internal static class FluxResistanceDerivation
{
    /// <summary>The steps, one line each.</summary>
    public static IEnumerable<FormattableString> Steps(DesignInput input, ArmatureFlux flux, StarterDesign design)
    {
        double driving = design.SupplyVolts - design.BrushDropVolts, first = design.Stages[0].TotalOhms;
        double peak = design.PeakAmps, switching = design.SwitchingAmps;
        if (design.Slack == Slack.LowerPeakCurrent) yield return $"<var>I</var><sub>1</sub> = {Amps(peak)} is found by trial: with it the total behind the last of {design.StageCount} cutouts is the armature’s own";
        yield return $"<var>R</var><sub>1</sub> = (<var>V</var> − <var>V</var><sub>b</sub>) / <var>I</var><sub>1</sub> = ({design.SupplyVolts} − {design.BrushDropVolts}) / {peak} = {Ohms(first)}, so that <var>I</var><sub>1</sub> = {Amps(peak)} flow at rest";
        if (design.Slack == Slack.RaiseSwitchingCurrent) yield return $"<var>I</var><sub>2</sub> = {Amps(switching)} is found by trial: with it the total behind the last of {design.StageCount} cutouts is the armature’s own";
        yield return $"The flux follows the current: <var>k</var>(<var>I</var><sub>1</sub>) = {Constant(flux.ConstantAt(peak))}, <var>k</var>(<var>I</var><sub>2</sub>) = {Constant(flux.ConstantAt(switching))}. The speed does not change during a cutout, so (<var>V</var> − <var>V</var><sub>b</sub> − <var>I</var><sub>1</sub> <var>R</var><sub>j+1</sub>) / <var>k</var>(<var>I</var><sub>1</sub>) = (<var>V</var> − <var>V</var><sub>b</sub> − <var>I</var><sub>2</sub> <var>R</var><sub>j</sub>) / <var>k</var>(<var>I</var><sub>2</sub>)";
        yield return Count(input, flux, design);
        double ratio = flux.ConstantAt(peak) / flux.ConstantAt(switching);
        for (int i = 1; i < design.StageCount; i++)
        {
            double backEmf = driving - switching * design.Stages[i - 1].TotalOhms;
            yield return $"<var>R</var><sub>{i + 1}</sub> = [(<var>V</var> − <var>V</var><sub>b</sub>) − <var>k</var>(<var>I</var><sub>1</sub>)/<var>k</var>(<var>I</var><sub>2</sub>) (<var>V</var> − <var>V</var><sub>b</sub> − <var>I</var><sub>2</sub> <var>R</var><sub>{i}</sub>)] / <var>I</var><sub>1</sub> = ({driving} − {ratio} · {backEmf}) / {peak} = {Ohms(design.Stages[i].TotalOhms)}; section {i} = {Ohms(design.Stages[i - 1].SectionOhms)}";
        }

        DesignedStage last = design.Stages[^1];
        FormattableString ends = $"section {last.Stage} = {last.TotalOhms} − {design.ArmatureOhms} = {Ohms(last.SectionOhms)}, down to <var>R</var><sub>{last.Stage + 1}</sub> = <var>R</var><sub>a</sub>";
        double next = (driving - ratio * (driving - switching * last.TotalOhms)) / peak;
        if (design.Slack != Slack.LastSection || input.CutoutVolts != null) yield return ends;
        else yield return $"The next total would be {Ohms(next)}, {(next <= design.ArmatureOhms ? "not above" : "close above")} the armature's {Ohms(design.ArmatureOhms)}: the last section takes the rest, {ReportPage.Text(ends)}";
    }

    // The sections are a geometric series, so their count is a logarithm too.
    private static FormattableString Count(DesignInput input, ArmatureFlux flux, StarterDesign design)
    {
        if (input.PeakAmps is not double peak || input.SwitchingAmps is not double switching) return $"Number of stages: {design.StageCount}, as given";
        double q = flux.ConstantAt(peak) * switching / (flux.ConstantAt(switching) * peak);
        string taken = Math.Abs(design.StageCountExact - design.StageCount) < 0.0005 ? $"exactly {design.StageCount}" : $"taken: {design.StageCount}";
        return $"Each section is <var>q</var> = <var>k</var>(<var>I</var><sub>1</sub>) <var>I</var><sub>2</sub> / (<var>k</var>(<var>I</var><sub>2</sub>) <var>I</var><sub>1</sub>) = {q} times the one before. Stages that the two given currents, {Amps(peak)} and {Amps(switching)}, ask for until the sections add up to <var>R</var><sub>1</sub> − <var>R</var><sub>a</sub>: {design.StageCountExact}; {taken}";
    }
}
