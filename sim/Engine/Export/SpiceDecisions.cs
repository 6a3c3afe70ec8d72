using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;

namespace StarterCtl.Engine.Export;

/// <summary>What the controller decides: when the field stands and when a stage is cut out.</summary>
internal static class SpiceDecisions
{
    /// <summary>Writes the part.</summary>
    public static void Write(SpiceText text, SpiceScene scene, SpiceTerms terms, SpiceOptions options)
    {
        text.Part("decisions: a margin passes 0 when its contact is to close");
        text.Comment("A watch switches nothing. It makes the simulator step up to the crossing within microseconds.");
        text.Line(".model watch SW(vt=0 vh=0 ron=1 roff=1e6)");
        if (terms.HasFieldBuilding) WriteFieldBuilding(text, scene.Settings, terms);
        if (options.ClosingSeconds == null) WriteCutouts(text, scene, terms);
        else WriteGivenTimes(text, options.ClosingSeconds);
        WriteClosed(text, scene.Settings.StageCount);
    }

    private static void WriteFieldBuilding(SpiceText text, Settings settings, SpiceTerms terms)
    {
        text.Comment($"The line closes once the field has stood for {SpiceTerms.Short(settings.FieldBuildMicroseconds * 1e-6)} s with at least {SpiceTerms.Short(settings.MinimumFieldAmps)} A.");
        string field = settings.MinimumFieldAmps > 0
            ? $"1e5*(abs({SpiceTerms.FieldAmps})/{SpiceText.Number(settings.MinimumFieldAmps)}-1)"
            : "V(start)";
        WriteMargin(text, "field", terms.SinceStart(field));
        if (settings.FieldBuildMicroseconds <= 0) return;
        text.Line("Sstands start stands field_margin 0 contact OFF");
        text.Line("Rstands stands 0 1000");
        text.Comment("V(stood) is the time, s, for which the field has stood.");
        text.Line("Bclock 0 stood I=V(stands)");
        text.Line("Cclock stood 0 1 ic=0");
        WriteMargin(text, "line", $"1e5*(V(stood)-{SpiceText.Number(settings.FieldBuildMicroseconds * 1e-6)})");
    }

    private static void WriteCutouts(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        Settings settings = scene.Settings;
        text.Comment("Stage j is cut out when the back-EMF at the flux of the permitted peak passes V(terminals) less brush drop");
        text.Comment("less the volts that may be left for the next resistance. Those fall from stage to stage: so does the order follow.");
        string atPeak = ConstantAtPeak(text, settings);
        for (int i = 0; i < settings.StageCount; i++)
        {
            string margin = $"{SpiceText.Number(terms.MarginGain)}*({atPeak}*{SpiceTerms.Speed}-({SpiceTerms.TerminalVolts}{SpiceTerms.Signed(-settings.BrushDropVolts)}{SpiceTerms.Signed(-settings.VoltsLeft[i])}))";
            string lockout = $"1e5*(1-{SpiceTerms.Amps}/{SpiceText.Number(settings.LockoutAmps)})";
            WriteMargin(text, $"{i + 1}", terms.SinceStart(settings.LockoutAmps < Settings.Largest ? $"min({margin},{lockout})" : margin));
        }
    }

    private static void WriteGivenTimes(SpiceText text, IReadOnlyList<double> seconds)
    {
        text.Comment("Each stage contact closes at a given time.");
        for (int i = 0; i < seconds.Count; i++) text.Line($"Vmargin_{i + 1} margin_{i + 1} 0 {SpiceText.Stepped(-1, [(seconds[i], 1)])}");
    }

    private static void WriteClosed(SpiceText text, int stages)
    {
        text.Comment("V(closed_j) is 1 once the contact of stage j has closed.");
        for (int i = 1; i <= stages; i++)
        {
            text.Line($"Sclosed_{i} start closed_{i} margin_{i} 0 contact OFF");
            text.Line($"Rclosed_{i} closed_{i} 0 1000");
        }
    }

    private static void WriteMargin(SpiceText text, string name, string expression)
    {
        string node = char.IsAsciiDigit(name[0]) ? $"margin_{name}" : $"{name}_margin";
        text.Element($"B{node} {node} 0 V={expression}");
        text.Line($"Swatch_{name} watch_{name} 0 {node} 0 watch OFF");
        text.Line($"Rwatch_{name} watch_{name} 0 1");
    }

    // The controller's own table: straight lines between its points, as the board has it.
    private static string ConstantAtPeak(SpiceText text, Settings settings)
    {
        if (settings.FluxSource != FluxSource.FieldCurrent) return SpiceText.Number(new FluxModel(settings).AtPeak(new Readings()));
        double taken = settings.ReactionRatio > 0 ? settings.ReactionRatio * Math.Abs(settings.PeakAmps) : settings.ReactionRatio * settings.PeakAmps;
        double[] xs = [.. settings.CurveAmps.Take(settings.CurvePoints).Select(amps => (double)amps)];
        double[] ys = [.. settings.CurveConstants.Take(settings.CurvePoints).Select(constant => (double)constant)];
        text.Comment("The flux of the permitted peak by the controller's own table: straight lines between its points.");
        text.Line($"Bnet_field net_field 0 V=abs({SpiceTerms.FieldAmps}){(taken == 0 ? "" : SpiceTerms.Signed(-taken))}");
        text.Element($"Bconstant_at_peak constant_at_peak 0 V={SpiceCurve.Lines(xs, ys, "V(net_field)")}");
        return "V(constant_at_peak)";
    }
}
