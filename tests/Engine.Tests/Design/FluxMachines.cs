using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>Machines of our own invention whose flux follows the armature current, fixed and random.</summary>
internal static class FluxMachines
{
    /// <summary>A series motor: 0.9 V s/rad at 60 A, 1.3 at 156 A.</summary>
    public static ArmatureFlux Series { get; } = new(
        new FluxLaw(new Magnetisation([0, 30, 60, 100, 156, 220], [0.06, 0.5, 0.9, 1.15, 1.3, 1.38])) { FieldShare = 0, ArmatureShare = 1 }, 0);

    /// <summary>A 220 V starter for it.</summary>
    public static DesignInput SeriesInput { get; } = new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.18,
        BrushDropVolts = 2,
        Flux = Series,
        InertiaKgM2 = 2.5,
        RatedAmps = 78,
        PeakAmps = 156,
        SwitchingAmps = 95,
    };

    /// <summary>A curve with a knee, of the field winding's 2 A.</summary>
    public static Magnetisation Knee { get; } = new([0, 1, 1.5, 2, 3], [0.05, 1.4, 1.6, 1.69, 1.8]);

    /// <summary>A curve without a knee: 1.65 V s/rad at 2 A, and 0.8 V s/rad less for every ampere less.</summary>
    public static Magnetisation Straight { get; } = new([0, 2], [0.05, 1.65]);

    /// <summary>Random starters of series machines and cumulative compounds: a flux that rises with the current.</summary>
    public static Gen<DesignInput> AnyRising { get; } =
        Gen.Select(Gen.Double[0, 1].Array[12], Gen.Double[0.02, 1].Array[3, 8]).Select((u, rises) => Build(u, rises, falls: false));

    /// <summary>Random starters of shunt machines with armature reaction and differential compounds: a flux that falls a little.</summary>
    public static Gen<DesignInput> AnyFalling { get; } =
        Gen.Select(Gen.Double[0, 1].Array[12], Gen.Double[0.02, 1].Array[3, 8]).Select((u, rises) => Build(u, rises, falls: true));

    /// <summary>The same input with a flat curve of a constant flux, which goes the way of every other curve.</summary>
    public static DesignInput Flat(DesignInput input, double constant) => input with
    {
        MachineConstant = null,
        Flux = new ArmatureFlux(new FluxLaw(new Magnetisation([0, 1, 2], [constant, constant, constant])) { FieldShare = 0, ArmatureShare = 1 }, 0),
    };

    private static DesignInput Build(double[] u, double[] rises, bool falls)
    {
        double volts = Log(12, 600, u[0]), peakAmps = Log(2, 500, u[1]), brushVolts = u[2] < 0.3 ? 0 : 0.02 * u[2] * volts;
        double firstOhms = (volts - brushVolts) / peakAmps, k = volts / Log(50, 400, u[3]);
        ArmatureFlux flux = falls ? Falling(u, rises, peakAmps, k) : Rising(u, rises, peakAmps, k);
        double switchingAmps = peakAmps * (0.4 + 0.45 * u[4]);
        double torque = 0.6 * u[5] * switchingAmps * flux.ConstantAt(switchingAmps);
        return new DesignInput
        {
            SupplyVolts = volts,
            ArmatureOhms = firstOhms / Log(2.5, 20, u[6]),
            BrushDropVolts = brushVolts,
            Flux = flux,
            InertiaKgM2 = Log(0.05, 0.5, u[7]) * k * k / firstOhms,
            // A series machine may run far above V/k: the load is kept constant there, or grows a little.
            Load = new Load(torque, u[8] < 0.5 ? 0 : 0.02 * torque * k / volts, 0),
            PeakAmps = peakAmps,
            SwitchingAmps = switchingAmps,
        };
    }

    private static ArmatureFlux Rising(double[] u, double[] rises, double peakAmps, double k)
    {
        // Half of them series machines, half with a field winding of 2 A that the series winding strengthens by up to 2 A.
        if (u[9] < 0.5) return new ArmatureFlux(new FluxLaw(Curve(rises, (0.7 + u[10]) * peakAmps, k)) { FieldShare = 0, ArmatureShare = 1 }, 0);
        double share = (0.05 + 1.95 * u[11]) / peakAmps;
        return new ArmatureFlux(new FluxLaw(Curve(rises, 2 + 2 * u[10], k)) { ArmatureShare = share, ReactionRatio = 0.3 * share }, 2);
    }

    private static ArmatureFlux Falling(double[] u, double[] rises, double peakAmps, double k)
    {
        double taken = 0.01 + 0.2 * u[11];
        FluxLaw law = new(Curve(rises, 2 + u[10], k));
        return new ArmatureFlux(u[9] < 0.5 ? law with { ReactionRatio = taken / peakAmps } : law with { ArmatureShare = -taken / peakAmps }, 2);
    }

    private static Magnetisation Curve(double[] rises, double lastAmps, double lastConstant)
    {
        double sum = 0, whole = rises.Sum() / 0.95;
        // Steep first, as iron is: the larger rises come before the smaller.
        double[] constants = [.. rises.OrderDescending().Select(rise => (0.05 + (sum += rise) / whole) * lastConstant)];
        return new Magnetisation([0, .. constants.Select((_, i) => lastAmps * (i + 1) / constants.Length)], [0.05 * lastConstant, .. constants]);
    }

    private static double Log(double low, double high, double u) => low * Math.Pow(high / low, u);
}
