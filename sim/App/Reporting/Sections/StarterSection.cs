using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The designed sections and thresholds, and where every one of them comes from.</summary>
internal static class StarterSection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        StarterDesign design = study.Design;
        page.BeginSection("starter", "The starter");
        page.Paragraph($"At rest there is no back-EMF. Only resistance holds the current then: on the full supply the bare armature would take {Amps(design.DirectStartAmps)}. The starter puts resistance in series and cuts it out piece by piece as the back-EMF grows.");
        page.Add(CircuitDrawing.Draw(design, StudyMachine.Kind(study)));
        WriteTable(page, study);
        if (design.Stages[0].CutoutRpm != null) Staircase.Write(page, study);
        page.Heading("Where the resistances come from");
        page.Steps(ResistanceDerivation.Steps(study.DesignInput, design));
        page.Heading("Where the thresholds come from");
        ThresholdDerivation.Write(page, study.DesignInput, design);
        WriteComparison(page, study);
        page.EndSection();
    }

    private static void WriteTable(ReportPage page, StartStudy study)
    {
        StarterDesign design = study.Design;
        ReportTable table = new(
            "Stages in the order in which they are cut out, at rated supply",
            [
                "Stage", "In circuit, Ω", "Section, Ω", "Threshold, V", "of supply, %", "Speed, r/min", "Volts left, V",
                "First current, A", "Last current, A", "Time, s", "Heat, kJ",
            ],
            "figures tight");
        foreach (DesignedStage stage in design.Stages)
        {
            table.Add(
                stage.Stage, stage.TotalOhms, stage.SectionOhms, stage.CutoutVolts, stage.CutoutFraction * 100, OrDash(stage.CutoutRpm, Plain), stage.VoltsLeft,
                stage.PeakAmps, stage.SwitchingAmps, OrDash(stage.ExpectedSeconds, Plain), OrDash(stage.EnergyJoules / 1000, Plain));
        }

        double? seconds = design.Stages.Sum(stage => stage.ExpectedSeconds), joules = design.Stages.Sum(stage => stage.EnergyJoules);
        if (design.Stages[0].ExpectedSeconds == null) seconds = joules = null;
        table.Add("armature alone", design.ArmatureOhms, "–", "–", "–", "–", "–", design.FinalPeakAmps, "–", "–", "–");
        table.Add("total", "–", design.Stages.Sum(stage => stage.SectionOhms), "–", "–", "–", "–", "–", "–", OrDash(seconds, Plain), OrDash(joules / 1000, Plain));
        page.Table(table);
        page.Note($"Threshold: the back-EMF {(study.DesignInput.Flux == null ? "at which the stage is cut out" : "just before the stage is cut out")}. First and last current: just after the stage comes into effect, and just before it is cut out. {(study.DesignInput.Flux == null ? "" : "Volts left: supply less brush drop less the back-EMF that the flux of the permitted peak current would make at that speed. ")}Heat: of the section over one start. Times and heats leave out inductance and contactor delays. Voltages are those at the starter's input terminals.");
    }

    private static void WriteComparison(ReportPage page, StartStudy study)
    {
        StarterDesign design = study.Design;
        DesignedStage first = design.Stages[0];
        double low = 0.9 * design.SupplyVolts;
        page.Heading("What the controller compares");
        page.Paragraph($"The controller does not hold a fixed threshold. It holds the <em>volts left</em> of each stage and compares, in every period, <var>E</var> ≥ <var>V</var> − <var>V</var><sub>b</sub> − volts left, with the supply <var>V</var> that it measures at that moment. <var>E</var> is its estimate from the measured speed, <var>E</var> = <var>k</var> <var>w</var>{WhichFlux(study)}. Should something drive the shaft above the supply, it also waits while <var>E</var> is more than <var>V</var> + <var>V</var><sub>b</sub> + volts left, for the current that would flow back.");
        if (study.DesignInput.Flux != null)
        {
            page.Paragraph($"The current just after the cutout is what is left over of the supply, divided by the next resistance. So the peak stays where it was designed on a low or a high supply, as far as the controller knows the flux. Example: at {Volts(low)}, 10 % low, stage 1 goes out when <var>k</var>(<var>I</var><sub>1</sub>) <var>w</var> has reached {Volts(low)} − {Volts(design.BrushDropVolts)} − {Volts(first.VoltsLeft)} = {Volts(low - design.BrushDropVolts - first.VoltsLeft)} instead of {Volts(design.SupplyVolts - design.BrushDropVolts - first.VoltsLeft)}; the volts left are the same, and with them the next peak.");
            if (study.Setup.Supply.SourceOhms > 0) WriteSourceDrop(page, design, study.Setup.Supply.SourceOhms);
            return;
        }

        if (first.HeldToVolts != null) page.Paragraph($"Beside that the current must have fallen to the lockout current of {Amps(study.DesignInput.LockoutAmps)}, which at rated supply comes later.");
        else page.Paragraph($"The current just after the cutout is what is left over of the supply, divided by the next resistance. So the peak stays where it was designed on a low or a high supply. Example: at {Volts(low)}, 10 % low, stage 1 goes out at {Volts(low)} − {Volts(design.BrushDropVolts)} − {Volts(first.VoltsLeft)} = {Volts(low - design.BrushDropVolts - first.VoltsLeft)} instead of {Volts(first.CutoutVolts)}; the next peak is {Volts(first.VoltsLeft)} / {Ohms(NextOhms(design, 0))} = {Amps(first.VoltsLeft / NextOhms(design, 0))} in both cases.");
        if (study.Setup.Supply.SourceOhms > 0) WriteSourceDrop(page, design, study.Setup.Supply.SourceOhms);
    }

    private static Markup WhichFlux(StartStudy study)
    {
        FluxSource source = study.Settings.FluxSource;
        if (source == FluxSource.Constant) return new Markup("");
        string of = source == FluxSource.FieldCurrent ? "the measured field current" : "its curve over the armature current";
        return study.DesignInput.Flux == null
            ? ReportPage.Text($", with <var>k</var> from {of}")
            : ReportPage.Text($", with the <var>k</var> that the peak current will have, from {of}");
    }

    // The measured supply at a cutout is that at the stage's own last current, which given sections or thresholds decide.
    private static void WriteSourceDrop(ReportPage page, StarterDesign design, double sourceOhms)
    {
        double least = design.Stages.Min(stage => stage.SwitchingAmps), most = design.Stages.Max(stage => stage.SwitchingAmps);
        if (Plain(sourceOhms * least) == Plain(sourceOhms * most))
        {
            page.Note($"In the run the supply's own resistance of {Ohms(sourceOhms)} lowers the measured supply by {Volts(sourceOhms * most)} at the {Amps(most)} that flow just before a cutout, and the thresholds in the record lie that much below the table.");
            return;
        }

        string[] drops = [.. design.Stages.Select(stage => $"stage {stage.Stage} by {Volts(sourceOhms * stage.SwitchingAmps)} at {Amps(stage.SwitchingAmps)}")];
        page.Note($"In the run the supply's own resistance of {Ohms(sourceOhms)} lowers the measured supply before a cutout, by as much as the stage's last current loses in it, and the thresholds in the record lie that much below the table: {string.Join(", ", drops)}.");
    }

    /// <summary>Current just after the cutout of a stage, A.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Stage, counted from 0.</param>
    public static double NextPeakAmps(StarterDesign design, int index) =>
        index + 1 < design.Stages.Count ? design.Stages[index + 1].PeakAmps : design.FinalPeakAmps;

    /// <summary>Armature-circuit total after the cutout of a stage, ohm.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Stage, counted from 0.</param>
    public static double NextOhms(StarterDesign design, int index) =>
        index + 1 < design.Stages.Count ? design.Stages[index + 1].TotalOhms : design.ArmatureOhms;
}
