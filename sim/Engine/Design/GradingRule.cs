using System;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>What the flux decides in a design: how the totals follow each other, and where each cutout lies.</summary>
internal abstract class GradingRule
{
    private protected GradingRule(DesignInput input)
    {
        Input = input;
        Alone = input.CharacteristicOn(input.ArmatureOhms);
    }

    /// <summary>Supply less brush drop, V.</summary>
    public double DrivingVolts => Alone.DrivingVolts;

    private protected DesignInput Input { get; }

    /// <summary>The machine on its armature resistance alone.</summary>
    private protected Characteristic Alone { get; }

    private protected DesignQuantity LimitAtFault => Input.CutoutVolts != null ? DesignQuantity.CutoutVoltages
        : Input.SectionOhms != null ? DesignQuantity.Sections
        : Input.SwitchingAmps != null ? DesignQuantity.SwitchingCurrent : DesignQuantity.PeakCurrent;

    /// <summary>The rule for the flux of an input.</summary>
    public static GradingRule Of(DesignInput input) =>
        input.Flux == null ? new ConstantFluxRule(input) : new ArmatureFluxRule(input, input.Flux);

    /// <summary>Refuses a peak current with which the load would not turn.</summary>
    public abstract void CheckLoadCanStart(double peakAmps);

    /// <summary>Exact count of stages between two currents; infinity when no number of them gets to the armature alone.</summary>
    public abstract double ExactCount(double peakAmps, double switchingAmps);

    /// <summary>Why no number of stages between two currents gets to the armature alone.</summary>
    public abstract DesignException NeverReachesArmature(double peakAmps, double switchingAmps);

    /// <summary>I2 that makes a number of stages end on the armature alone, A.</summary>
    public abstract double RaisedSwitchingAmps(double peakAmps, int stageCount);

    /// <summary>I1 that makes a number of stages end on the armature alone, A.</summary>
    public abstract double LoweredPeakAmps(double switchingAmps, int stageCount);

    /// <summary>Stage totals, ohm, one more than stages: the last entry is the armature alone.</summary>
    public abstract double[] Totals(double peakAmps, double switchingAmps, int stageCount);

    /// <summary>Currents, back-EMF and speed of every cutout.</summary>
    public abstract StarterStatics Statics(double[] totals, StageCurrents currents);

    /// <summary>Time and heat of a stage; null without what they need.</summary>
    public abstract (double Seconds, double SquareAmpSeconds)? Timing(double totalOhms, double fromRadPerSec, StageStatics stage);

    // Computed sections cannot come to this: they begin at V/I1, and I2 is below I1.
    private protected DesignException CutOutAtStandstill(double[] totals, StageCurrents currents)
    {
        if (currents.SwitchingAmps is double switching && switching * totals[0] >= DrivingVolts)
        {
            return new DesignException(
                DesignQuantity.Sections,
                $"{Text.Number(totals[0])} ohm in stage 1, which passes {Amps(DrivingVolts / totals[0])} at standstill, not above the switching current of {Amps(switching)}: the stage would be cut out at once",
                $"below {Text.Number(DrivingVolts / switching)} ohm in all, armature included; or a lower switching current");
        }

        return new DesignException(
            DesignQuantity.Sections,
            $"a first section without which {Text.Number(totals[1])} ohm pass {Amps(DrivingVolts / totals[1])} at standstill, not above the peak current of {Amps(currents.PeakAmps!.Value)}: the stage would be cut out at once",
            $"below {Text.Number(DrivingVolts / currents.PeakAmps.Value)} ohm without the first section; or one section less");
    }

    /// <summary>
    /// Refuses a stage whose torque is short on the way although it is enough at both ends: one that falls with the current, or a load
    /// with a hump.
    /// </summary>
    private protected void CheckNotHeldBefore(CutoutWalk walk, int i, double fromRadPerSec, double toRadPerSec, double peakAmps)
    {
        if (walk.IsHeldAt(i, toRadPerSec, peakAmps) || walk.FirstHeld(i, fromRadPerSec, toRadPerSec, peakAmps) is not double held) return;
        double amps = Alone.On(walk.TotalOf(i)).AmpsAt(held, peakAmps);
        throw new DesignException(
            Alone.FluxFalls && Input.SectionOhms == null ? DesignQuantity.PeakCurrent : LimitAtFault,
            $"{Torque(Alone.AtAmps(amps).TorqueNewtonMetres)} from {Amps(amps)} in stage {i + 1} at {Rpm(held)} r/min, where the load takes {Torque(Input.Load.TorqueAt(held))}: the stage would never end",
            Alone.FluxFalls
                ? "a lower peak current, a flux that falls less with the current, or a lighter load during the start"
                : "a higher switching current, more stages, or a lighter load during the start");
    }

    private protected static string Amps(double amps) => Text.Number(amps) + " A";

    private protected static string Torque(double newtonMetres) => Text.Number(newtonMetres) + " N m";

    private protected static string Rpm(double radPerSec) => Text.Number(radPerSec * 30 / Math.PI);
}
