using System;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>The grading of a starter for a machine whose flux changes with the armature current.</summary>
/// <remarks>
/// The flux-ratio recursion: at a cutout the speed stays, so (V - Vb - I1 R') / k(I1) = (V - Vb - I2 R) / k(I2) gives the next
/// total R'. Derived here: it is linear in R, so the sections are a geometric series with the ratio q = k(I1) I2 / (k(I2) I1),
/// which begins with R1 (k(I1)/k(I2) - q). With constant flux it is the geometric rule.
/// </remarks>
/// <param name="alone">Machine and supply, on the armature alone.</param>
public sealed class FluxGrading(Characteristic alone)
{
    /// <summary>The total after the cutout of a stage, ohm: I1 flows at the speed at which I2 flowed before.</summary>
    /// <param name="totalOhms">Total of the stage, ohm.</param>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="switchingAmps">I2, A.</param>
    public double NextTotal(double totalOhms, double peakAmps, double switchingAmps)
    {
        double fluxRatio = alone.ConstantAt(peakAmps) / alone.ConstantAt(switchingAmps);
        return (alone.DrivingVolts - fluxRatio * alone.On(totalOhms).AtAmps(switchingAmps).BackEmfVolts) / peakAmps;
    }

    /// <summary>
    /// Exact count of stages between two currents: the power of q at which the series of sections sums to R1 - Ra, which is
    /// ln(R1/Ra) / ln(I1/I2) at constant flux. Infinity when the sections shrink to nothing before the armature is reached.
    /// </summary>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="switchingAmps">I2, A, below I1.</param>
    public double ExactCount(double peakAmps, double switchingAmps)
    {
        (double firstTotal, double firstSection, double ratio) = Series(peakAmps, switchingAmps);
        double sections = (firstTotal - alone.CircuitOhms) / firstSection;
        if (ratio == 1) return sections;
        // sum = first (1 - q^n) / (1 - q); ln(1 + x) keeps its digits where q is near 1.
        double rest = (ratio - 1) * sections;
        return rest <= -1 ? double.PositiveInfinity : LogOnePlus(rest) / LogOnePlus(ratio - 1);
    }

    /// <summary>The total to which endless sections would lead, ohm: above the armature's where the count is infinite.</summary>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="switchingAmps">I2, A, below I1.</param>
    public double LastTotal(double peakAmps, double switchingAmps)
    {
        (double firstTotal, double firstSection, double ratio) = Series(peakAmps, switchingAmps);
        return ratio < 1 ? firstTotal - firstSection / (1 - ratio) : double.NegativeInfinity;
    }

    /// <summary>Stage totals by the recursion; the last entry is the armature alone.</summary>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="switchingAmps">I2, A, below I1.</param>
    /// <param name="stageCount">Number of stages.</param>
    /// <returns>Ohms, one more than stages.</returns>
    public double[] Totals(double peakAmps, double switchingAmps, int stageCount)
    {
        double[] totals = new double[stageCount + 1];
        totals[0] = alone.DrivingVolts / peakAmps;
        for (int i = 1; i < stageCount; i++) totals[i] = NextTotal(totals[i - 1], peakAmps, switchingAmps);
        totals[stageCount] = alone.CircuitOhms;
        return totals;
    }

    /// <summary>The highest I2, A, with which a number of stages ends on the armature alone; null: none does.</summary>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="stageCount">Number of stages.</param>
    public double? RaisedSwitchingAmps(double peakAmps, int stageCount) =>
        FirstRoot.Find(amps => MissedBy(peakAmps, amps, stageCount), peakAmps, 0, !alone.FluxFalls);

    /// <summary>The lowest I1, A, with which a number of stages ends on the armature alone; null: none does.</summary>
    /// <param name="switchingAmps">I2, A.</param>
    /// <param name="stageCount">Number of stages.</param>
    public double? LoweredPeakAmps(double switchingAmps, int stageCount) =>
        FirstRoot.Find(amps => MissedBy(amps, switchingAmps, stageCount), switchingAmps, alone.StandstillAmps, !alone.FluxFalls);

    // How far the total behind the last cutout lies above the armature's.
    private double MissedBy(double peakAmps, double switchingAmps, int stageCount)
    {
        double total = alone.DrivingVolts / peakAmps;
        for (int i = 0; i < stageCount; i++) total = NextTotal(total, peakAmps, switchingAmps);
        return total - alone.CircuitOhms;
    }

    private (double FirstTotal, double FirstSection, double Ratio) Series(double peakAmps, double switchingAmps)
    {
        double fluxRatio = alone.ConstantAt(peakAmps) / alone.ConstantAt(switchingAmps);
        double ratio = fluxRatio * switchingAmps / peakAmps, firstTotal = alone.DrivingVolts / peakAmps;
        return (firstTotal, firstTotal * (fluxRatio - ratio), ratio);
    }

    // ln(1 + x), exact for small x: the rounding of 1 + x is divided out again (Kahan's way; from memory).
    private static double LogOnePlus(double x)
    {
        double sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * (x / (sum - 1));
    }
}
