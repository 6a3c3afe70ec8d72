using System;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>The rule of a machine whose flux changes with the armature current: every current is a root on its curve.</summary>
internal sealed class ArmatureFluxRule : GradingRule
{
    private readonly FluxGrading _grading;
    private readonly ArmatureFlux _flux;

    public ArmatureFluxRule(DesignInput input, ArmatureFlux flux)
        : base(input)
    {
        _flux = flux;
        _grading = new FluxGrading(Alone);
    }

    public override void CheckLoadCanStart(double peakAmps)
    {
        double constant = _flux.ConstantAt(peakAmps);
        if (constant <= 0)
        {
            throw new DesignException(
                DesignQuantity.PeakCurrent,
                $"{Amps(peakAmps)}, at which no flux is left: {Constant(constant)}",
                "a lower peak current, or a series winding or armature reaction that takes less flux away");
        }

        double loadTorque = Input.Load.TorqueAt(0), torque = Alone.AtAmps(peakAmps).TorqueNewtonMetres;
        if (torque > loadTorque) return;
        double breakawayAmps = Alone.AmpsForTorque(loadTorque);
        bool isReachable = double.IsFinite(breakawayAmps) && breakawayAmps >= peakAmps;
        throw new DesignException(
            DesignQuantity.PeakCurrent,
            $"{Amps(peakAmps)}, which gives {Torque(torque)}, but the load needs {Torque(loadTorque)} to turn at all",
            isReachable ? $"above {Amps(breakawayAmps)}, or a lighter load at the start" : "a lighter load at the start, or a flux that falls less with the current");
    }

    public override double ExactCount(double peakAmps, double switchingAmps) => _grading.ExactCount(peakAmps, switchingAmps);

    // The currents' speeds on the armature alone tell why: the machine must be slower at I1 than at I2 to be accelerated there.
    public override DesignException NeverReachesArmature(double peakAmps, double switchingAmps)
    {
        double armatureOhms = Input.ArmatureOhms, peakSpeed = Alone.AtAmps(peakAmps).SpeedRadPerSec;
        double? mended = FirstRoot.Find(amps => Alone.AtAmps(amps).SpeedRadPerSec - peakSpeed, switchingAmps, 0, isSingle: false);
        string mend = mended is double amps ? $"a switching current below {Amps(amps)}, or " : "";
        return new DesignException(
            DesignQuantity.SwitchingCurrent,
            $"{Amps(switchingAmps)}, with which the sections shrink to nothing at {Ohms(_grading.LastTotal(peakAmps, switchingAmps))} and never reach the armature's {Ohms(armatureOhms)}: the flux falls from {Constant(_flux.ConstantAt(switchingAmps))} to {Constant(_flux.ConstantAt(peakAmps))} at the peak current of {Amps(peakAmps)}",
            $"{mend}a lower peak current, or a flux that falls less with the current");
    }

    public override double RaisedSwitchingAmps(double peakAmps, int stageCount) =>
        _grading.RaisedSwitchingAmps(peakAmps, stageCount) ?? throw new DesignException(
            DesignQuantity.Stages,
            $"{stageCount}, with which no switching current leads from the peak current of {Amps(peakAmps)} to the armature alone: the flux falls to {Constant(_flux.ConstantAt(peakAmps))} from {Constant(_flux.ConstantAt(0))} without current",
            "more stages, a lower peak current, or a flux that falls less with the current");

    public override double LoweredPeakAmps(double switchingAmps, int stageCount) =>
        _grading.LoweredPeakAmps(switchingAmps, stageCount) ?? throw new DesignException(
            DesignQuantity.Stages,
            $"{stageCount}, with which no peak current leads from the switching current of {Amps(switchingAmps)} to the armature alone",
            "more stages, a lower switching current, or a flux that falls less with the current");

    public override double[] Totals(double peakAmps, double switchingAmps, int stageCount) => _grading.Totals(peakAmps, switchingAmps, stageCount);

    public override StarterStatics Statics(double[] totals, StageCurrents currents)
    {
        if (Input.CutoutVolts != null) HandThresholds.Check(Input.CutoutVolts, DrivingVolts, currents.StageCount);
        CutoutWalk walk = new(Alone, totals, Input.Load);
        Func<int, double, Cutout> cutoutOf = Input.CutoutVolts == null
            ? (i, peakAmps) => CutoutOf(walk, totals, i, currents, currents.PeakAmps, peakAmps)
            : (i, _) => walk.AtVolts(i, Input.CutoutVolts[i]);
        StageStatics[] stages = Walk(walk, totals, currents, cutoutOf, out double finalPeakAmps);
        if (currents.PeakAmps is double given) return new StarterStatics(WithVoltsLeft(stages, given), finalPeakAmps);

        // Without a limit the largest peak is the one that the controller is set to.
        double largest = Math.Max(finalPeakAmps, stages.Max(stage => stage.PeakAmps));
        if (Input.CutoutVolts == null)
        {
            stages = Walk(walk, totals, currents, (i, peakAmps) => CutoutOf(walk, totals, i, currents, largest, peakAmps), out finalPeakAmps);
        }

        return new StarterStatics(WithVoltsLeft(stages, largest), finalPeakAmps);
    }

    public override (double Seconds, double SquareAmpSeconds)? Timing(double totalOhms, double fromRadPerSec, StageStatics stage) =>
        Input.InertiaKgM2 is double inertia
            ? StageTiming.Of(Alone.On(totalOhms), inertia, Input.Load, fromRadPerSec, stage.CutoutRadPerSec!.Value, stage.PeakAmps)
            : null;

    private StageStatics[] Walk(CutoutWalk walk, double[] totals, StageCurrents currents, Func<int, double, Cutout> cutoutOf, out double finalPeakAmps)
    {
        StageStatics[] stages = new StageStatics[currents.StageCount];
        double speed = 0, amps = 0;
        for (int i = 0; i < stages.Length; i++)
        {
            double peakAmps = Peak(totals[i], speed, amps, i);
            Cutout threshold = cutoutOf(i, peakAmps), cutout = HeldBack(walk, i, threshold, peakAmps);
            if (i == 0 && cutout.RadPerSec <= 0 && Input.CutoutVolts == null) throw CutOutAtStandstill(totals, currents);
            if (!(cutout.RadPerSec > speed)) throw DoesNotRise(i, speed, cutout.RadPerSec);
            amps = walk.AmpsBefore(i, cutout, peakAmps) ?? throw Leaps(i, cutout);
            if (Alone.FluxFalls || Input.Load.Table != null) CheckNotHeldBefore(walk, i, speed, cutout.RadPerSec, peakAmps);
            speed = cutout.RadPerSec;
            stages[i] = new StageStatics(
                Alone.On(totals[i]).AtAmps(cutout == threshold ? amps : walk.AmpsBefore(i, threshold, peakAmps) ?? throw Leaps(i, threshold)).BackEmfVolts,
                speed,
                peakAmps,
                amps,
                0,
                Alone.AmpsForTorque(Input.Load.TorqueAt(speed)))
            {
                HeldToVolts = cutout == threshold ? null : Alone.On(totals[i]).AtAmps(amps).BackEmfVolts,
                ThresholdRadPerSec = threshold.RadPerSec,
            };
        }

        finalPeakAmps = Peak(Input.ArmatureOhms, speed, amps, stages.Length);
        return stages;
    }

    // Beside the threshold the current must be within the lockout, unless the load would never let it fall so far.
    private Cutout HeldBack(CutoutWalk walk, int i, Cutout threshold, double peakAmps)
    {
        if (!double.IsFinite(Input.LockoutAmps)) return threshold;
        Cutout lockout = walk.AtAmps(i, Input.LockoutAmps, null);
        return lockout.RadPerSec > threshold.RadPerSec && !walk.IsHeldAt(i, lockout.RadPerSec, peakAmps) ? lockout : threshold;
    }

    private double Peak(double totalOhms, double radPerSec, double fromAmps, int cutouts)
    {
        double amps = Alone.On(totalOhms).AmpsAt(radPerSec, fromAmps);
        if (double.IsFinite(amps)) return amps;
        throw new DesignException(
            DesignQuantity.PeakCurrent,
            $"a cutout of stage {cutouts} at {Rpm(radPerSec)} r/min behind which the current rises from {Amps(fromAmps)} until no flux is left",
            "a lower peak current with more stages, or a flux that falls less with the current");
    }

    private StageStatics[] WithVoltsLeft(StageStatics[] stages, double limitAmps)
    {
        double constant = _flux.ConstantAt(limitAmps);
        StageStatics[] result = [.. stages.Select(stage => stage with { VoltsLeft = DrivingVolts - constant * stage.ThresholdRadPerSec!.Value })];
        int unreachable = Array.FindIndex(result, stage => stage.VoltsLeft <= 0);
        if (unreachable < 0) return result;
        // Only thresholds by hand come to this: all others stop before it.
        StageStatics found = result[unreachable];
        throw new DesignException(
            DesignQuantity.CutoutVoltages,
            $"{Text.Number(found.CutoutVolts)} V for stage {unreachable + 1}: at that speed of {Rpm(found.ThresholdRadPerSec!.Value)} r/min the flux of the peak current of {Amps(limitAmps)} would give {Text.Number(DrivingVolts - found.VoltsLeft)} V, and the controller compares with that",
            $"cutouts below {Rpm(DrivingVolts / constant)} r/min, where that is the {Text.Number(DrivingVolts)} V of supply less brush drop");
    }

    // As at constant flux: real parts with both limits are cut out at the later of the two, unless the load holds before it.
    private Cutout CutoutOf(CutoutWalk walk, double[] totals, int i, StageCurrents currents, double? limitAmps, double peakAmps)
    {
        Cutout? bySwitching = currents.SwitchingAmps is double switching ? walk.AtAmps(i, switching, limitAmps) : null;
        if (!currents.AreSectionsGiven || currents.PeakAmps is not double limit) return bySwitching!;
        Cutout byPeak = new(Alone.On(totals[i + 1]).AtAmps(limit).SpeedRadPerSec, null);
        if (bySwitching == null) return byPeak;
        bool isPeakLater = byPeak.RadPerSec > bySwitching.RadPerSec;
        return isPeakLater && !walk.IsHeldAt(i, byPeak.RadPerSec, peakAmps) ? byPeak : bySwitching;
    }

    private DesignException DoesNotRise(int i, double beforeRadPerSec, double radPerSec) => new(
        LimitAtFault,
        $"a cutout of stage {i + 1} at {Rpm(radPerSec)} r/min, not above the {Rpm(beforeRadPerSec)} r/min at which it comes into effect: it would be cut out at once",
        "cutouts whose speeds rise from stage to stage; with this flux a higher back-EMF is not always a higher speed");

    private DesignException Leaps(int i, Cutout cutout) => new(
        LimitAtFault,
        $"a cutout of stage {i + 1} at {Rpm(cutout.RadPerSec)} r/min and {Amps(cutout.Amps!.Value)}, where the current would not stay: the flux falls so fast with it that it leaps past",
        "a lower peak current, more resistance in the stage, or a flux that falls less with the current");

    private static string Constant(double constant) => Text.Number(constant) + " V s/rad";

    private static string Ohms(double ohms) => Text.Number(ohms) + " ohm";
}
