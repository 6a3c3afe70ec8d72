using System;
using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The magnetisation curve and where the machine is on it.</summary>
internal static class MagnetisationPart
{
    private const double UsualRadPerSec = 1000 * Math.PI / 30;

    public static void Write(ReportPage page, StartStudy study)
    {
        if (study.Setup.Machine.Flux is not FluxLaw law) return;
        Magnetisation curve = law.Curve;
        double speed = study.CurveRadPerSec ?? study.Plate.RatedRadPerSec ?? UsualRadPerSec, rated = RatedAmps(curve, study.Setup.Machine.Constant);
        double[] exciting = [.. study.Trace.Samples.Where(sample => sample.LineClosed).Select(sample => Exciting(law, sample))];
        (double From, double To)? used = exciting.Length > 0 ? (exciting.Min(), exciting.Max()) : null;
        string range = used is (double from, double to) ? $" While the line was closed the exciting current went from {Amps(from)} to {Amps(to)}: the thick part." : "";
        page.Heading("The magnetisation curve");
        page.Paragraph($"The flux comes from a curve over the exciting current {Law(law)}. The iron saturates: the last amperes add little.");
        page.Add(Figure.Of(
            "magnetisation",
            $"Back-EMF at {Rpm(speed * 30 / Math.PI)} against exciting current up to {Amps(curve.LastAmps)}, with the rated point at {Amps(rated)} and {Volts(speed * curve.ConstantAt(rated))}.",
            ReportPage.Text($"Back-EMF at {Rpm(speed * 30 / Math.PI)}. Circles: {(study.CurveRadPerSec == null && curve.Amps.Count == 2 ? "no curve is given, so a straight line from what the iron keeps to the rated point" : "the points of the case")}. Diamond: rated point, {Amps(rated)} and {Volts(speed * curve.ConstantAt(rated))}, {Constant(curve.ConstantAt(rated))}.{range} Behind the last point the flux is taken to stay."),
            (320, 300),
            size => MagnetisationPlot.Build(curve, speed, rated, used, size)));
    }

    // What the sensors read is what flows unless a case breaks one; a picture may be off there.
    private static double Exciting(FluxLaw law, Sample sample) => law.ExcitingAmps(sample.FieldAmps, sample.ArmatureAmps);

    private static Markup Law(FluxLaw law)
    {
        if (law.FieldShare == 0) return ReportPage.Text($"<var>x</var> = <var>I</var><sub>a</sub>, for the field winding carries the armature current{Reaction(law)}");
        Markup field = law.FieldShare == 1 ? new Markup("<var>I</var><sub>f</sub>") : ReportPage.Text($"{law.FieldShare} <var>I</var><sub>f</sub>");
        if (law.ArmatureShare == 0) return ReportPage.Text($"<var>x</var> = {field}{Reaction(law)}");
        return ReportPage.Text($"<var>x</var> = {field} {(law.ArmatureShare < 0 ? "−" : "+")} {Math.Abs(law.ArmatureShare)} <var>I</var><sub>a</sub>{Reaction(law)}, for an ampere of the series winding counts as {Math.Abs(law.ArmatureShare)} A {(law.ArmatureShare < 0 ? "against" : "of")} the shunt winding");
    }

    private static Markup Reaction(FluxLaw law) =>
        law.ReactionRatio == 0 ? new Markup("") : ReportPage.Text($" − {law.ReactionRatio} |<var>I</var><sub>a</sub>| of armature reaction");

    private static double RatedAmps(Magnetisation curve, double constant) =>
        constant >= curve.Constants[^1] ? curve.LastAmps
        : constant <= curve.Constants[0] ? 0
        : RootFinder.Find(amps => curve.ConstantAt(amps) - constant, 0, curve.LastAmps, 1e-12 * curve.LastAmps);
}
