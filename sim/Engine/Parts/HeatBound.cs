using System;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Parts;

/// <summary>
/// The least integral of the current squared that a section sees before its cutout, over every starter whose totals lie within given
/// windows: what no part can escape.
/// </summary>
/// <remarks>
/// Integral of <c>I^2 J dw / (T(I) - TL(w))</c> over the speed. At each speed the current lies between those of the highest and the
/// lowest total that can be in effect there; both are split small, and each piece taken at its least.
/// </remarks>
internal static class HeatBound
{
    private const int SpeedSteps = 64;
    private const int AmpSteps = 8;

    /// <summary>Least A2 s of every section, first cut out first; zeros where mass or flux are unknown.</summary>
    public static double[] Of(DesignInput input, double[] lowest, double[] highest, double switchingAmps, double limitAmps)
    {
        int stages = lowest.Length - 1;
        double[] least = new double[stages];
        if (input.InertiaKgM2 is not double inertia || (input.MachineConstant == null && input.Flux == null)) return least;
        Characteristic alone = input.CharacteristicOn(input.ArmatureOhms);
        double flux = alone.ConstantAt(switchingAmps);
        double[] earliest = [.. highest[..stages].Select((total, i) => Math.Min(alone.On(total).AtAmps(switchingAmps).SpeedRadPerSec, (alone.DrivingVolts - switchingAmps * highest[i + 1]) / alone.ConstantAt(limitAmps)))];
        double[] latest = [.. lowest[..stages].Select(total => (alone.DrivingVolts - switchingAmps * total) / flux)];
        double step = Math.Max(0, earliest[^1]) / SpeedSteps;
        for (int i = 0; i < SpeedSteps && step > 0; i++)
        {
            double from = i * step, to = from + step;
            double high = highest[FirstOf(latest, from)], low = lowest[LastOf(earliest, to)];
            double fewest = Math.Max(switchingAmps, alone.On(high).AmpsAt(to, limitAmps)), most = Math.Min(limitAmps, alone.On(low).AmpsAt(from, limitAmps));
            double load = Math.Min(input.Load.TorqueAt(from), input.Load.TorqueAt(to));
            double piece = LeastOver(alone, fewest, Math.Max(fewest, most), load) * inertia * step;
            for (int section = 0; section < stages; section++) if (to <= earliest[section] * (1 + 1e-12)) least[section] += piece;
        }

        return least;
    }

    // The first stage that can still be in at a speed.
    private static int FirstOf(double[] latest, double radPerSec)
    {
        int stage = Array.FindIndex(latest, speed => speed >= radPerSec);
        return stage < 0 ? latest.Length - 1 : stage;
    }

    // The last stage that can be in before a speed; behind the last cutout there is none.
    private static int LastOf(double[] earliest, double radPerSec) => Math.Min(earliest.Length - 1, earliest.Count(speed => speed < radPerSec));

    private static double LeastOver(Characteristic alone, double fewest, double most, double loadTorque)
    {
        double least = double.PositiveInfinity, width = (most - fewest) / AmpSteps;
        for (int i = 0; i < AmpSteps; i++)
        {
            double amps = fewest + i * width;
            double torque = Math.Max(alone.AtAmps(amps).TorqueNewtonMetres, alone.AtAmps(amps + width).TorqueNewtonMetres) - loadTorque;
            if (torque > 0) least = Math.Min(least, amps * amps / torque);
        }

        // Where no current accelerates the load no stage ends: that is for the designer to say.
        return double.IsFinite(least) ? least : 0;
    }
}
