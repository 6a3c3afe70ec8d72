using System;
using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>What one step of an analogue channel stands for: a power of two, so that every number written is exact.</summary>
internal static class ComtradeScale
{
    // A reading far out of what the settings believe is still drawn.
    private const double Headroom = 16;

    // Numbers without a unit of the machine's own: temperatures, what belongs to a reason.
    private const double OtherLimit = 1 << 16;
    private const double StepsEachSide = int.MaxValue;

    /// <summary>The step of a signal.</summary>
    /// <param name="signal">The signal; what is no real number counts in ones.</param>
    /// <param name="settings">The controller's settings, which say what is believed of volts, amperes and speed.</param>
    public static double Of(Signal signal, Settings settings)
    {
        if (signal.Kind is not (SignalKind.Real or SignalKind.LongReal)) return 1;
        double limit = signal.Unit switch
        {
            "V" => settings.HighestSupplyVolts,
            "A" => settings.InstantTripAmps,
            "rad/s" => settings.HighestSpeedRadPerSec,

            // Torque is power over speed: what these believe at the most, at a hundredth of the highest speed.
            "N m" => settings.HighestSupplyVolts * settings.InstantTripAmps / (0.01 * settings.HighestSpeedRadPerSec),
            _ => OtherLimit,
        };
        return Math.Pow(2, Math.Ceiling(Math.Log2(Headroom * limit / StepsEachSide)));
    }

    /// <summary>Steps of a number, held at the ends of the range; the standard's word for a missing one where it is not a number.</summary>
    public static int Steps(double number, double step) =>
        double.IsNaN(number) ? int.MinValue : (int)Math.Clamp(Math.Round(number / step), -int.MaxValue, int.MaxValue);
}
