using System;
using System.Collections.Generic;
using StarterCtl.Engine;

namespace StarterCtl.Link;

/// <summary>
/// What the noise of a channel usually means. All rules and numbers: common practice, no source. They hold for a check with
/// the power circuit isolated: with it live, the quantities themselves change with the coils.
/// </summary>
public static class NoiseRules
{
    /// <summary>Samples without which nothing is said of a situation.</summary>
    public const int LeastSamples = 50;

    /// <summary>Spread at rest that is too much, as a part of the range.</summary>
    public const double MostRestSpreadRatio = 0.01;

    /// <summary>Change of the mean between rest and coils on that is too much, as a part of the range.</summary>
    public const double MostShiftRatio = 0.005;

    /// <summary>Step at the release of a coil that is too much, as a part of the range.</summary>
    public const double MostReleaseStepRatio = 0.05;

    /// <summary>How much larger than any step at rest a step at release must be, to be the release's.</summary>
    public const int ReleaseStepTimesRest = 4;

    /// <summary>How much larger than at rest the deviation with coils on must be, to be the coils'.</summary>
    public const int CoilNoiseTimesRest = 3;

    /// <summary>Deviation with coils on below which nothing is said of it, as a part of the range.</summary>
    public const double LeastCoilNoiseRatio = 0.002;

    private const int PerCent = 100;

    /// <summary>What a channel shows; nothing if all is well.</summary>
    public static IReadOnlyList<NoiseFinding> Judge(ChannelNoise noise)
    {
        List<NoiseFinding> findings = [];
        if (noise.Rest.Count < LeastSamples)
        {
            findings.Add(new NoiseFinding(
                "no rest", $"{noise.Rest.Count} samples at rest (allowed: {LeastSamples} or more)", "there is nothing to hold the others against", "record for some seconds before the first start"));
            return findings;
        }

        JudgeRest(noise, findings);
        if (noise.CoilsOn.Count >= LeastSamples) JudgeCoilsOn(noise, findings);
        if (noise.Release.Count >= LeastSamples) JudgeRelease(noise, findings);
        return findings;
    }

    private static void JudgeRest(ChannelNoise noise, List<NoiseFinding> findings)
    {
        if (noise.Rest.Spread > MostRestSpreadRatio * noise.FullScaleCounts)
        {
            findings.Add(new NoiseFinding(
                "noise at rest",
                $"spread of {noise.Rest.Spread} counts at rest ({Allowed(noise, MostRestSpreadRatio)})",
                "the wire picks up fields, or screen and ground are not connected as they should be",
                "connect the screen at one end only, twist the pair, take it away from power cables, look at the sensor's own ground"));
        }

        if (noise.Rest.Spread == 0 && noise.CoilsOn.Spread == 0 && noise.Release.Spread == 0)
        {
            findings.Add(new NoiseFinding(
                "no life",
                $"every one of {noise.Rest.Count} samples is {noise.Rest.Lowest} counts",
                "a live signal moves by a count now and then: the input may be open, shorted, clipped or not read at all",
                "put a known signal on the input and look again"));
        }
    }

    private static void JudgeCoilsOn(ChannelNoise noise, List<NoiseFinding> findings)
    {
        double shift = Math.Abs(noise.CoilsOn.Mean - noise.Rest.Mean);
        if (shift > MostShiftRatio * noise.FullScaleCounts)
        {
            findings.Add(new NoiseFinding(
                "shift with coils on",
                $"mean moves by {Text.Number(shift)} counts with coils on ({Allowed(noise, MostShiftRatio)})",
                "coil current flows through a return that the measurement shares, or the sensor's supply sags under it",
                "give coils and sensors returns of their own that meet at one point; measure the sensor's supply with coils on"));
        }

        bool isLouder = noise.CoilsOn.Deviation > CoilNoiseTimesRest * noise.Rest.Deviation;
        if (isLouder && noise.CoilsOn.Deviation > LeastCoilNoiseRatio * noise.FullScaleCounts)
        {
            findings.Add(new NoiseFinding(
                "noise with coils on",
                $"deviation of {Text.Number(noise.CoilsOn.Deviation)} counts with coils on, {Text.Number(noise.Rest.Deviation)} at rest ({Allowed(noise, LeastCoilNoiseRatio)})",
                "the coils' supply carries ripple, as an economy circuit or an unsmoothed rectifier does, and couples into the wire",
                "take coil wires away from sensor wires; smooth the coils' supply or give the board one of its own"));
        }
    }

    private static void JudgeRelease(ChannelNoise noise, List<NoiseFinding> findings)
    {
        int step = noise.Release.LargestStep;
        if (step > MostReleaseStepRatio * noise.FullScaleCounts && step > ReleaseStepTimesRest * noise.Rest.LargestStep)
        {
            findings.Add(new NoiseFinding(
                "step at release",
                $"step of {step} counts at the release of a coil, {noise.Rest.LargestStep} at rest ({Allowed(noise, MostReleaseStepRatio)})",
                "the coil's stored energy goes into the wiring: the suppressor across it is missing, open or in the wrong place",
                "put a diode (dc coil), a varistor or an RC element across the coil itself; a diode makes the contactor open later"));
        }
    }

    private static string Allowed(ChannelNoise noise, double ratio) =>
        $"allowed: {Text.Number(ratio * PerCent)} % of the range, {Text.Number(ratio * noise.FullScaleCounts)} counts";
}
