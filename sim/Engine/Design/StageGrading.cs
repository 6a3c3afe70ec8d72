using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Design;

/// <summary>The geometric grading of a starter at constant flux: stage count, currents and stage totals.</summary>
/// <remarks>
/// Any machines text: R1 = (V - Vb)/I1, each total is the one before divided by I1/I2, and the count is
/// ln(R1/Ra) / ln(I1/I2).
/// </remarks>
public static class StageGrading
{
    /// <summary>Part of a stage by which the exact count may be passed before it is rounded up: 8.004 is 8.</summary>
    public const double CountAllowance = 0.02;

    /// <summary>Exact count of stages between two currents.</summary>
    /// <param name="drivingVolts">Supply less brush drop, V.</param>
    /// <param name="armatureOhms">Armature-circuit resistance, ohm.</param>
    /// <param name="peakAmps">I1, A.</param>
    /// <param name="switchingAmps">I2, A, below I1.</param>
    public static double ExactCount(double drivingVolts, double armatureOhms, double peakAmps, double switchingAmps) =>
        Math.Log(drivingVolts / (peakAmps * armatureOhms)) / Math.Log(peakAmps / switchingAmps);

    /// <summary>The whole count: rounded up with the allowance, at least 1.</summary>
    public static int WholeCount(double exactCount) => Math.Max(1, (int)Math.Ceiling(exactCount - CountAllowance));

    /// <summary>I2 that makes a number of stages equal: I2 = I1 (Ra/R1)^(1/n).</summary>
    public static double RaisedSwitchingAmps(double drivingVolts, double armatureOhms, double peakAmps, int stageCount) =>
        peakAmps * Math.Pow(armatureOhms * peakAmps / drivingVolts, 1.0 / stageCount);

    /// <summary>I1 that makes a number of stages equal: I1^(n+1) = I2^n (V - Vb)/Ra.</summary>
    public static double LoweredPeakAmps(double drivingVolts, double armatureOhms, double switchingAmps, int stageCount) =>
        Math.Pow(Math.Pow(switchingAmps, stageCount) * drivingVolts / armatureOhms, 1.0 / (stageCount + 1));

    /// <summary>Stage totals; the last entry is the armature alone.</summary>
    /// <returns>Ohms, one more than stages.</returns>
    public static double[] Totals(double drivingVolts, double armatureOhms, double peakAmps, double switchingAmps, int stageCount)
    {
        double[] totals = new double[stageCount + 1];
        totals[0] = drivingVolts / peakAmps;
        for (int i = 1; i < stageCount; i++) totals[i] = totals[i - 1] * switchingAmps / peakAmps;
        totals[stageCount] = armatureOhms;
        return totals;
    }

    /// <summary>Stage totals of given sections; the last entry is the armature alone.</summary>
    public static double[] TotalsOf(IReadOnlyList<double> sectionOhms, double armatureOhms)
    {
        double[] totals = new double[sectionOhms.Count + 1];
        totals[sectionOhms.Count] = armatureOhms;
        for (int i = sectionOhms.Count - 1; i >= 0; i--) totals[i] = totals[i + 1] + sectionOhms[i];
        return totals;
    }
}
