using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Design;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>How the count of stages, the two currents and the stage totals were found, with the numbers put in.</summary>
internal static class ResistanceDerivation
{
    /// <summary>The steps, one line each.</summary>
    public static IEnumerable<FormattableString> Steps(DesignInput input, StarterDesign design) =>
        input.SectionOhms != null ? Given(design)
        : input.Flux == null ? Computed(input, design) : FluxResistanceDerivation.Steps(input, input.Flux, design);

    private static IEnumerable<FormattableString> Given(StarterDesign design)
    {
        yield return $"The sections are given, not computed. The totals add up from the armature: <var>R</var><sub>{design.StageCount + 1}</sub> = <var>R</var><sub>a</sub> = {Ohms(design.ArmatureOhms)}";
        foreach (DesignedStage stage in design.Stages.Reverse())
        {
            yield return $"<var>R</var><sub>{stage.Stage}</sub> = <var>R</var><sub>{stage.Stage + 1}</sub> + section {stage.Stage} = {StarterSection.NextOhms(design, stage.Stage - 1)} + {stage.SectionOhms} = {Ohms(stage.TotalOhms)}";
        }
    }

    private static IEnumerable<FormattableString> Computed(DesignInput input, StarterDesign design)
    {
        double driving = design.SupplyVolts - design.BrushDropVolts;
        double peak = design.PeakAmps, switching = design.SwitchingAmps, first = design.Stages[0].TotalOhms;
        int count = design.StageCount;
        if (design.Slack == Slack.LowerPeakCurrent)
        {
            yield return $"Peak current that {count} equal {Stages(count)} from <var>I</var><sub>2</sub> = {Amps(switching)} leave: <var>I</var><sub>1</sub> = (<var>I</var><sub>2</sub><sup>{count}</sup> (<var>V</var> − <var>V</var><sub>b</sub>) / <var>R</var><sub>a</sub>)<sup>1/{count + 1}</sup> = ({switching}<sup>{count}</sup> · {driving} / {design.ArmatureOhms})<sup>1/{count + 1}</sup> = {Amps(peak)}";
        }

        yield return $"<var>R</var><sub>1</sub> = (<var>V</var> − <var>V</var><sub>b</sub>) / <var>I</var><sub>1</sub> = ({design.SupplyVolts} − {design.BrushDropVolts}) / {peak} = {Ohms(first)}, so that <var>I</var><sub>1</sub> = {Amps(peak)} flow at rest";
        if (design.Slack == Slack.RaiseSwitchingCurrent)
        {
            yield return $"Switching current that makes {count} equal {Stages(count)}: <var>I</var><sub>2</sub> = <var>I</var><sub>1</sub> (<var>R</var><sub>a</sub> / <var>R</var><sub>1</sub>)<sup>1/{count}</sup> = {peak} · ({design.ArmatureOhms} / {first})<sup>1/{count}</sup> = {Amps(switching)}";
        }

        if (input.PeakAmps is double givenPeak && input.SwitchingAmps is double givenSwitching)
        {
            double ohms = driving / givenPeak;
            string taken = Math.Abs(design.StageCountExact - count) < 0.0005 ? $"exactly {count}" : $"taken: {count}";
            yield return $"Stages that the two given currents, {Amps(givenPeak)} and {Amps(givenSwitching)}, ask for: ln({ohms} / {design.ArmatureOhms}) / ln({givenPeak} / {givenSwitching}) = {design.StageCountExact}; {taken}";
        }
        else
        {
            yield return $"Number of stages: {count}, as given";
        }

        foreach (FormattableString step in Totals(design)) yield return step;
        yield return Rest(input, design);
    }

    private static IEnumerable<FormattableString> Totals(StarterDesign design)
    {
        for (int i = 1; i < design.StageCount; i++)
        {
            yield return $"<var>R</var><sub>{i + 1}</sub> = <var>R</var><sub>{i}</sub> · <var>I</var><sub>2</sub> / <var>I</var><sub>1</sub> = {design.Stages[i - 1].TotalOhms} · {design.SwitchingAmps} / {design.PeakAmps} = {Ohms(design.Stages[i].TotalOhms)}; section {i} = {Ohms(design.Stages[i - 1].SectionOhms)}";
        }
    }

    private static FormattableString Rest(DesignInput input, StarterDesign design)
    {
        DesignedStage last = design.Stages[^1];
        double next = last.TotalOhms * design.SwitchingAmps / design.PeakAmps;
        FormattableString ends = $"section {last.Stage} = {last.TotalOhms} − {design.ArmatureOhms} = {Ohms(last.SectionOhms)}, down to <var>R</var><sub>{last.Stage + 1}</sub> = <var>R</var><sub>a</sub>";
        if (design.Slack != Slack.LastSection || input.CutoutVolts != null) return ends;
        return $"The next total would be {Ohms(next)}, {(next <= design.ArmatureOhms ? "not above" : "close above")} the armature's {Ohms(design.ArmatureOhms)}: the last section takes the rest, {ReportPage.Text(ends)}";
    }

    private static string Stages(int count) => count == 1 ? "stage" : "stages";
}
