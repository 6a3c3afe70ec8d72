using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>Writes a case that carries a starter chosen for the worst case.</summary>
internal static class WorstCaseFile
{
    // Common practice, no source, as in every case that leaves it open.
    private const double InstantTripRatio = 1.5;

    /// <summary>The case with sections and thresholds.</summary>
    /// <param name="designed">The case without.</param>
    /// <param name="grading">The starter.</param>
    /// <param name="torqueNewtonMetres">Highest torque of any plant, N m, which becomes the limit where the case has none.</param>
    /// <exception cref="CaseException">A table of the case has no place for new keys.</exception>
    public static CaseFile Of(CaseDesign designed, Grading grading, double torqueNewtonMetres)
    {
        CaseFile file = designed.File;
        double[] sections = [.. grading.SectionOhms.Select(Rounded)];
        List<(CaseKey Key, string Value)> starter = [(CaseKeys.StarterCutoutVoltages, List(Cutouts(designed.Input, sections, grading.VoltsLeft).Select(Rounded), "V"))];
        if (!file.Has(CaseKeys.StarterSections)) starter.Insert(0, (CaseKeys.StarterSections, List(sections, "ohm")));
        file = With(file, "# Chosen for the worst case by starterctl design:", starter);
        List<(CaseKey Key, string Value)> control = [(CaseKeys.ControlLockoutCurrent, Quoted(RoundedUp(grading.Lockout.Amps), "A"))];
        if (!file.Has(CaseKeys.ControlMinimumDwell)) control.Add((CaseKeys.ControlMinimumDwell, Quoted(Math.Round(1e3 * grading.Lockout.DwellSeconds, 3), "ms")));
        // Where the chosen starter stays far below the permitted peak a trip that follows from its own peak would lie below that.
        if (!file.Has(CaseKeys.ControlInstantTrip)) control.Add((CaseKeys.ControlInstantTrip, Quoted(InstantTripRatio * file.Number(CaseKeys.StarterPeakCurrent), "A")));
        file = With(file, "# Chosen for the worst case:", control);
        // Without it the torque of the nominal machine at the peak would be the limit, which a stronger one passes.
        if (!file.Has(CaseKeys.LimitsPeakTorque)) file = With(file, "# Highest torque at the worst case's peak:", [(CaseKeys.LimitsPeakTorque, Quoted(RoundedUp(torqueNewtonMetres), "N m"))]);
        return file;
    }

    private static CaseFile With(CaseFile file, string comment, IReadOnlyList<(CaseKey Key, string Value)> pairs) =>
        CaseFile.Parse(file.FileName, CaseAddition.To(file, [comment], pairs));

    // The back-EMF that stands in a case is that just before the cutout; the controller compares with that of the peak's flux.
    private static double[] Cutouts(DesignInput input, double[] sections, IReadOnlyList<double> voltsLeft)
    {
        double peak = input.PeakAmps!.Value;
        double[] totals = StageGrading.TotalsOf(sections, input.ArmatureOhms), cutouts = new double[sections.Length];
        for (int i = 0; i < cutouts.Length; i++)
        {
            Characteristic stage = input.CharacteristicOn(totals[i]);
            if (input.Flux == null) cutouts[i] = stage.DrivingVolts - voltsLeft[i];
            else cutouts[i] = stage.AtAmps(stage.AmpsAt((stage.DrivingVolts - voltsLeft[i]) / stage.ConstantAt(peak), peak)).BackEmfVolts;
        }

        return cutouts;
    }

    private static string List(IEnumerable<double> numbers, string unit) => $"[{string.Join(", ", numbers.Select(number => Quoted(number, unit)))}]";

    private static string Quoted(double number, string unit) => $"\"{number.ToString("0.##########", CultureInfo.InvariantCulture)} {unit}\"";

    private static double Rounded(double number) => double.Parse(number.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static double RoundedUp(double number)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(number)) - 3);
        return Math.Round(Math.Ceiling(number / step) * step, 10);
    }
}
