using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>From the force on one conductor to the machine constant, with the case's own figures.</summary>
internal static class ConstantChain
{
    public static void Write(ReportPage page, StartStudy study)
    {
        page.Heading("From one conductor to the constant");
        page.Paragraph($"<strong>One conductor.</strong> A conductor of length <var>l</var> across a field of density <var>B</var> feels the force <var>F</var> = <var>B</var> <var>l</var> <var>I</var> when it carries the current <var>I</var>, and makes the voltage <var>e</var> = <var>B</var> <var>l</var> <var>v</var> when it moves across the field at the speed <var>v</var>. The <em>left hand</em> shows the force on a current: first finger along the field, second finger along the current, and the thumb points along the force. The <em>right hand</em> shows the voltage of a moving conductor: first finger along the field, thumb along the motion, and the second finger points where the voltage would drive a current. In a motor that is against the current that flows: the <em>back</em>-EMF.");
        page.Paragraph($"<strong>One loop.</strong> Its two conductors lie under opposite poles. Their voltages add up to 2 <var>B</var> <var>l</var> <var>v</var>, and their forces turn the shaft the same way with 2 <var>B</var> <var>l</var> <var>I</var> <var>r</var>. <strong>The armature</strong> has <var>Z</var> conductors in <var>A</var> parallel paths: <var>Z</var>/<var>A</var> of them in series add their voltages, and each carries <var>I</var>/<var>A</var>. The commutator keeps the direction under each pole the same.");
        OperatingPoint point = StudyMachine.OnFullSupply(study).AtAmps(StudyMachine.FullLoadAmps(study));
        if (study.Construction is Construction built) WriteForwards(page, study, built, point);
        else WriteBackwards(page, study, point);
    }

    // In one turn a conductor passes the flux of every pole, so neither B nor l nor r is needed on its own.
    private static void WriteForwards(ReportPage page, StartStudy study, Construction built, OperatingPoint point)
    {
        (int poles, int conductors, int paths, double flux) = built;
        double constant = poles * (double)conductors * flux / (2 * Math.PI * paths), perConductor = poles * flux * point.Rpm / 60;
        double series = (double)conductors / paths, pathAmps = point.ArmatureAmps / paths, turning = poles * flux * pathAmps / (2 * Math.PI);
        page.Paragraph($"With the construction that the case gives, at {Rpm(point.Rpm)} and {Amps(point.ArmatureAmps)}:");
        List<FormattableString> steps =
        [
            $"one conductor passes <var>P</var> poles in a turn: mean <var>e</var> = <var>P</var> <var>φ</var> <var>n</var> / 60 = {poles} · {flux} · {point.Rpm} / 60 = {Volts(perConductor)}",
            $"one loop: 2 <var>e</var> = 2 · {perConductor} = {Volts(2 * perConductor)}",
            $"one path of <var>Z</var> / <var>A</var> = {conductors} / {paths} = {series} conductors in series: {series} · {perConductor} = {Volts(series * perConductor)}",
            $"the same from the constant: <var>k</var> = <var>P</var> <var>Z</var> <var>φ</var> / (2π <var>A</var>) = {poles} · {conductors} · {flux} / ({2 * Math.PI} · {paths}) = {Constant(constant)}, and <var>E</var> = <var>k</var> <var>w</var> = {constant} · {point.SpeedRadPerSec} = {Volts(constant * point.SpeedRadPerSec)}",
            $"the current of a path, <var>I</var> / <var>A</var> = {point.ArmatureAmps} / {paths} = {Amps(pathAmps)}, makes on one conductor the mean torque <var>P</var> <var>φ</var> <var>I</var> / (2π <var>A</var>) = {poles} · {flux} · {pathAmps} / {2 * Math.PI} = {Torque(turning)}",
            $"all <var>Z</var> conductors: {conductors} · {turning} = {Torque(conductors * turning)}, which is <var>k</var> <var>I</var> = {constant} · {point.ArmatureAmps} = {Torque(constant * point.ArmatureAmps)}",
        ];
        page.Steps(steps);
        if (Math.Abs(constant / point.Constant - 1) > 1e-6) page.Note($"The rest of this report takes the flux from elsewhere: <var>k</var> = {Constant(point.Constant)} at {Amps(point.ArmatureAmps)}, which is {point.Constant / constant} times that of the construction.");
        page.Note($"<var>B</var>, <var>l</var> and the radius stand in these sums only as the flux <var>φ</var> that they make together. The case does not give length and radius, so the density itself does not follow.");
    }

    private static void WriteBackwards(ReportPage page, StartStudy study, OperatingPoint point)
    {
        page.Paragraph($"The case gives no construction data: neither poles, conductors and paths nor the flux of a pole. What they make together can still be read backwards from <var>k</var> = <var>P</var> <var>Z</var> <var>φ</var> / (2π <var>A</var>), here at {StudyMachine.FullLoadName(study)} of {Amps(point.ArmatureAmps)} on the full supply:");
        List<FormattableString> steps =
        [
            $"voltage of a path: <var>E</var> = <var>k</var> <var>w</var> = {point.Constant} · {point.SpeedRadPerSec} = {Volts(point.BackEmfVolts)} at {Rpm(point.Rpm)}",
            $"torque of all conductors: <var>T</var> = <var>k</var> <var>I</var> = {point.Constant} · {point.ArmatureAmps} = {Torque(point.TorqueNewtonMetres)}",
            $"one number for both: <var>E</var> / <var>w</var> = {point.BackEmfVolts} / {point.SpeedRadPerSec} = {Constant(point.Constant)} and <var>T</var> / <var>I</var> = {point.TorqueNewtonMetres} / {point.ArmatureAmps} = {Plain(point.Constant)}\u00A0N\u00A0m/A",
            $"so what the machine takes as electric power it gives as mechanical: <var>E</var> <var>I</var> = {point.BackEmfVolts} · {point.ArmatureAmps} = {PlainWatts(point.BackEmfVolts * point.ArmatureAmps)}, and <var>T</var> <var>w</var> = {point.TorqueNewtonMetres} · {point.SpeedRadPerSec} = {PlainWatts(point.TorqueNewtonMetres * point.SpeedRadPerSec)}",
            $"flux that the <var>Z</var>/<var>A</var> conductors of a path cut together in one turn: <var>P</var> <var>Z</var> <var>φ</var> / <var>A</var> = 2π <var>k</var> = {2 * Math.PI} · {point.Constant} = {Plain(2 * Math.PI * point.Constant)}\u00A0Wb",
        ];
        page.Steps(steps);
    }

    // A sum is worked out again from its numbers, so its result keeps the unit of its factors.
    private static string PlainWatts(double watts) => Plain(watts) + "\u00A0W";
}
