using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The start in the plane of torque and speed.</summary>
internal static class PlaneSection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        page.BeginSection("plane", "Torque against speed");
        bool follows = StudyMachine.FollowsArmature(study);
        if (follows) page.Paragraph($"With a fixed resistance the torque falls as the speed, and with it the back-EMF, rises: <var>T</var> = <var>k</var> (<var>V</var> − <var>V</var><sub>b</sub> − <var>k</var> <var>w</var>) / <var>R</var>. Because <var>k</var> follows the current, these are curves and not straight lines. A start runs down one curve, then jumps up to the next.");
        else page.Paragraph($"With a fixed resistance the torque falls in a straight line as the speed, and with it the back-EMF, rises: <var>T</var> = <var>k</var> (<var>V</var> − <var>V</var><sub>b</sub> − <var>k</var> <var>w</var>) / <var>R</var>. All lines meet at the no-load speed, where the back-EMF leaves nothing to drive a current. A start runs down one line, then jumps up to the next.");
        page.Add(Figure.Of(
            "plane-plot",
            $"Torque against speed: one {(follows ? "curve" : "straight line")} for each of the {study.Design.StageCount} stages and the armature alone, the load curve, and the path of the whole run, which ends at {Rpm(study.Result.FinalRpm)}.",
            ReportPage.Text($"Thin lines: characteristics of the stages, numbered, and of the armature alone; the supply’s resistance is included. Nearly level lines: the load, with the time from which it acts where it changes; an arrow points at one above the picture{(LoadSpan.Ramps(study.Setup).Any() ? "; a thin line of its colour: on its way from one to the next" : "")}. Thick line: path of the whole run, events included. Diamond: where it ended, at {Rpm(study.Result.FinalRpm)} and {Amps(study.Result.FinalAmps)}."),
            (440, 400),
            size => PlanePlot.Build(study, size)));
        page.EndSection();
    }
}
