using System;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>The two currents that a choice of parts keeps to.</summary>
/// <param name="PeakAmps">I1 that no peak passes, A.</param>
/// <param name="IsPeakGiven">True where the case gives it; false where the design computed it and some is given away.</param>
/// <param name="SwitchingAmps">I2 at which every stage is cut out, A.</param>
/// <param name="IsSwitchingGiven">True where the case gives it.</param>
public sealed record PartsLimits(double PeakAmps, bool IsPeakGiven, double SwitchingAmps, bool IsSwitchingGiven)
{
    // Over the load's current, as the design's own warning asks.
    private const double LeastLoadMargin = 1.1;

    private const int Digits = 6;

    /// <summary>What a case gives holds as it is; what the design computed of it gives way by a part of it, but never to the load.</summary>
    /// <param name="input">What the starter was designed from.</param>
    /// <param name="design">The design with sections of any value.</param>
    /// <param name="give">The part, 0 to below 1.</param>
    public static PartsLimits Of(DesignInput input, StarterDesign design, double give)
    {
        double loadAmps = design.Stages.Max(stage => stage.LoadAmps) ?? 0;
        double lowered = Math.Min(design.SwitchingAmps, Math.Max(design.SwitchingAmps * (1 - give), LeastLoadMargin * loadAmps));
        return new PartsLimits(
            input.PeakAmps ?? Written(design.PeakAmps * (1 + give)), input.PeakAmps != null,
            input.SwitchingAmps ?? Written(lowered), input.SwitchingAmps != null);
    }

    /// <summary>A current as a case file carries it: rounded to six digits.</summary>
    internal static double Written(double amps) => double.Parse(amps.ToString("G" + Digits, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>The same, rounded up.</summary>
    internal static double WrittenAbove(double amps)
    {
        double written = Written(amps);
        return written >= amps ? written : Written(amps * (1 + 5 * Math.Pow(10, -Digits)));
    }
}
