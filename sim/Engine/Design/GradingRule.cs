namespace StarterCtl.Engine.Design;

/// <summary>What the flux decides in a design: how the totals follow each other, and where each cutout lies.</summary>
internal abstract class GradingRule
{
    private protected GradingRule(DesignInput input, double drivingVolts)
    {
        Input = input;
        DrivingVolts = drivingVolts;
    }

    /// <summary>Supply less brush drop, V.</summary>
    public double DrivingVolts { get; }

    private protected DesignInput Input { get; }

    /// <summary>The rule for the flux of an input.</summary>
    public static GradingRule Of(DesignInput input, double drivingVolts) =>
        input.Flux == null ? new ConstantFluxRule(input, drivingVolts) : new ArmatureFluxRule(input, input.Flux, drivingVolts);

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

    private protected static string Amps(double amps) => Text.Number(amps) + " A";
}
