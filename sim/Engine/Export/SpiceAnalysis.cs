using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>The run itself and the figures that it prints.</summary>
internal static class SpiceAnalysis
{
    /// <summary>Writes the part and ends the netlist.</summary>
    public static void Write(SpiceText text, SpiceScene scene, SpiceOptions options)
    {
        RunSetup setup = scene.Setup;
        string end = SpiceText.Number(setup.DurationSeconds);
        text.Part("analysis");
        text.Line($".options reltol={SpiceText.Number(options.RelativeTolerance)} abstol=1e-9 vntol=1e-9 trtol={SpiceText.Number(options.StepErrorFactor)}");
        text.Line($".save {SpiceTerms.Amps} {SpiceTerms.Speed} {string.Join(' ', scene.Own.Cutouts.Select(cutout => $"V(closed_{cutout.Stage})").Distinct())}".TrimEnd());
        text.Line(".control");
        text.Line("set numdgt=10");
        for (int i = 0; i < options.Runs; i++) text.Line($"tran 1e-6 {end} 0 {SpiceText.Number(options.LongestStepSeconds)} uic");
        text.Line("let amps = abs(" + SpiceTerms.Amps + ")");
        WriteMeasurements(text, scene, end);
        text.Line("let peak_amps = vecmax(amps)");
        text.Line("let final_rpm = v(speed)[length(v(speed))-1]*30/pi");
        text.Line($"let final_amps = {SpiceTerms.Amps}[length(amps)-1]");
        foreach (SpiceFigure figure in SpiceFigure.Of(scene.Own)) text.Line($"print {figure.Name}");
        text.Line("quit 0");
        text.Line(".endc");
        text.Line(".end");
    }

    private static void WriteMeasurements(SpiceText text, SpiceScene scene, string end)
    {
        IReadOnlyList<Cutout> cutouts = scene.Own.Cutouts;
        foreach (Cutout cutout in cutouts) text.Line($"meas tran cutout_{cutout.Stage}_seconds when v(closed_{cutout.Stage})=0.5 rise=1");
        for (int i = 0; i < cutouts.Count; i++)
        {
            // Up to the next cutout, the next step of load or supply, or the end.
            double nextCutout = i + 1 < cutouts.Count ? cutouts[i + 1].Seconds : double.PositiveInfinity;
            RunEvent? step = scene.Setup.Events.FirstOrDefault(happening => happening.AtSeconds > cutouts[i].Seconds && happening.AtSeconds < nextCutout);
            string until = step != null ? SpiceText.Number(step.AtSeconds) : i + 1 < cutouts.Count ? $"$&cutout_{cutouts[i + 1].Stage}_seconds" : end;
            text.Line($"meas tran peak_after_{cutouts[i].Stage}_amps max amps from=$&cutout_{cutouts[i].Stage}_seconds to={until}");
        }
    }
}
