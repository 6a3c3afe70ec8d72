using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The graphic check of the design: a staircase on the characteristics of the stages.</summary>
internal static class Staircase
{
    public static void Write(ReportPage page, StartStudy study)
    {
        StarterStaircase staircase = new(study);
        StarterDesign design = study.Design;
        bool isStraight = study.DesignInput.Flux == null;
        page.Heading("The graphic check");
        page.Paragraph($"Each resistance has one curve of speed over current, <var>w</var> = (<var>V</var> − <var>V</var><sub>b</sub> − <var>I</var> <var>R</var>) / <var>k</var>{new Markup(isStraight ? "" : "(<var>I</var>)")}, {(isStraight ? "a straight line because the flux is constant" : "bent because the flux follows the current")}. The machine runs up a stage’s curve while the current falls. At a cutout it goes across to the next curve: the shaft cannot change its speed at once, so only the current jumps. A sound design is a staircase between <var>I</var><sub>2</sub> and <var>I</var><sub>1</sub> that ends on the armature’s own curve with room to the load.");
        string ends = staircase.Running is OperatingPoint running ? $"{Amps(running.ArmatureAmps)} and {Rpm(running.Rpm)}" : "no point at all, for this load is too heavy";
        page.Add(Figure.Of(
            "staircase",
            $"Speed against armature current: one curve for each of the {design.StageCount} stages and the armature alone, and the designed start as a staircase between {Amps(design.SwitchingAmps)} and {Amps(design.PeakAmps)} that ends at {ends}.",
            ReportPage.Text($"The designed start at rated supply, without inductance, contactor times and the supply’s resistance. Thin lines: characteristics, with the number of their stage, and of the armature alone. Thick line with circles: the staircase. Dotted: <var>I</var><sub>1</sub> and <var>I</var><sub>2</sub>. Long dashes: the current that the load needs. Diamond: the machine carries its load, at {ends}."),
            (440, 400),
            size => StaircasePlot.Build(study, staircase, size)));
        ReportTable table = new("The staircase in numbers: both sides of a cutout have the same speed", ["On the curve of", "From, A", "at, r/min", "To, A", "at, r/min"]);
        for (int i = 0; i < staircase.Treads.Count; i++)
        {
            (OperatingPoint from, OperatingPoint to) = staircase.Treads[i];
            table.Add(i < design.StageCount ? $"stage {i + 1}" : "the armature alone", from.ArmatureAmps, Rounded(from.Rpm, to.Rpm), to.ArmatureAmps, to.Rpm);
        }

        page.Table(table);
    }

    // At rest only the rounding of the sums is left.
    private static double Rounded(double rpm, double scale) => System.Math.Abs(rpm) < 1e-9 * System.Math.Abs(scale) ? 0 : rpm;
}
