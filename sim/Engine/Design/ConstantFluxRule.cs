using System;
using System.Linq;

namespace StarterCtl.Engine.Design;

/// <summary>The geometric rule of a machine whose flux stands still; the machine constant may be unknown.</summary>
internal sealed class ConstantFluxRule(DesignInput input) : GradingRule(input)
{
    public override void CheckLoadCanStart(double peakAmps)
    {
        if (Input.MachineConstant is not double k) return;
        double breakawayAmps = Input.Load.TorqueAt(0) / k;
        if (peakAmps <= breakawayAmps)
        {
            throw new DesignException(
                DesignQuantity.PeakCurrent,
                $"{Amps(peakAmps)}, but the load needs {Amps(breakawayAmps)} to turn at all",
                $"above {Amps(breakawayAmps)}, or a lighter load at the start");
        }
    }

    public override double ExactCount(double peakAmps, double switchingAmps) =>
        StageGrading.ExactCount(DrivingVolts, Input.ArmatureOhms, peakAmps, switchingAmps);

    public override DesignException NeverReachesArmature(double peakAmps, double switchingAmps) =>
        throw new InvalidOperationException("At constant flux every total is the same part of the one before.");

    public override double RaisedSwitchingAmps(double peakAmps, int stageCount) =>
        StageGrading.RaisedSwitchingAmps(DrivingVolts, Input.ArmatureOhms, peakAmps, stageCount);

    public override double LoweredPeakAmps(double switchingAmps, int stageCount) =>
        StageGrading.LoweredPeakAmps(DrivingVolts, Input.ArmatureOhms, switchingAmps, stageCount);

    public override double[] Totals(double peakAmps, double switchingAmps, int stageCount) =>
        StageGrading.Totals(DrivingVolts, Input.ArmatureOhms, peakAmps, switchingAmps, stageCount);

    public override StarterStatics Statics(double[] totals, StageCurrents currents)
    {
        double[] voltsLeft = Input.CutoutVolts == null ? VoltsLeft(totals, currents) : VoltsLeftByHand(currents.StageCount);
        if (voltsLeft[0] >= DrivingVolts) throw CutOutAtStandstill(totals, currents);

        StageStatics[] stages = new StageStatics[voltsLeft.Length];
        double leftBefore = DrivingVolts;
        for (int i = 0; i < stages.Length; i++)
        {
            // Beside the threshold the current must be within the lockout, unless the load would never let it fall so far.
            double heldLeft = Input.LockoutAmps * totals[i];
            bool isHeld = heldLeft < voltsLeft[i] && LoadAmpsAt(DrivingVolts - heldLeft) < Input.LockoutAmps;
            double left = isHeld ? heldLeft : voltsLeft[i];
            double? speed = (DrivingVolts - left) / Input.MachineConstant;
            stages[i] = new StageStatics(
                DrivingVolts - voltsLeft[i],
                speed,
                leftBefore / totals[i],
                left / totals[i],
                voltsLeft[i],
                Input.Load.TorqueAt(speed ?? 0) / Input.MachineConstant)
            {
                HeldToVolts = isHeld ? DrivingVolts - left : null,
            };
            leftBefore = left;
        }

        if (Input.Load.Table != null && Input.MachineConstant != null) CheckTable(totals, stages);

        return new StarterStatics(stages, leftBefore / Input.ArmatureOhms);
    }

    public override (double Seconds, double SquareAmpSeconds)? Timing(double totalOhms, double fromRadPerSec, StageStatics stage) =>
        Input.MachineConstant is double k && Input.InertiaKgM2 is double inertia
            ? StageTiming.Of(DrivingVolts, totalOhms, k, inertia, Input.Load, fromRadPerSec, stage.CutoutRadPerSec!.Value)
            : null;

    private void CheckTable(double[] totals, StageStatics[] stages)
    {
        CutoutWalk walk = new(Alone, totals, Input.Load);
        double from = 0;
        for (int i = 0; i < stages.Length; i++)
        {
            CheckNotHeldBefore(walk, i, from, stages[i].CutoutRadPerSec!.Value, stages[i].PeakAmps);
            from = stages[i].CutoutRadPerSec!.Value;
        }
    }

    // Real parts with both limits: the later of the two cutouts holds, fallen to I2 and the next peak within I1. Where the
    // load would hold the machine before the later one, I2 decides, and the peak that follows is warned of.
    private double[] VoltsLeft(double[] totals, StageCurrents currents)
    {
        double[] left = new double[currents.StageCount];
        for (int i = 0; i < left.Length; i++)
        {
            double bySwitching = currents.SwitchingAmps * totals[i] ?? double.PositiveInfinity;
            double byPeak = currents.AreSectionsGiven && currents.PeakAmps is double peak ? peak * totals[i + 1] : double.PositiveInfinity;
            bool isHeldBefore = currents.SwitchingAmps != null && byPeak / totals[i] <= LoadAmpsAt(DrivingVolts - byPeak);
            left[i] = isHeldBefore ? bySwitching : Math.Min(bySwitching, byPeak);
        }

        return left;
    }

    private double LoadAmpsAt(double backEmfVolts) =>
        Input.MachineConstant is double k ? Input.Load.TorqueAt(Math.Max(0, backEmfVolts) / k) / k : 0;

    private double[] VoltsLeftByHand(int stageCount)
    {
        HandThresholds.Check(Input.CutoutVolts!, DrivingVolts, stageCount);
        return [.. Input.CutoutVolts!.Select(volts => DrivingVolts - volts)];
    }
}
