using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>What was recorded of a channel.</summary>
/// <param name="Channel">Which channel.</param>
/// <param name="FullScaleCounts">Largest count of the converter.</param>
/// <param name="Rest">With every coil off and every contact open.</param>
/// <param name="CoilsOn">With coils on.</param>
/// <param name="Release">Just behind the release of a coil.</param>
public sealed record ChannelNoise(CalibrationChannel Channel, int FullScaleCounts, NoiseSamples Rest, NoiseSamples CoilsOn, NoiseSamples Release)
{
    internal static ChannelNoise Of(NoiseAnswer[] answers) => new(
        answers[0].Channel,
        answers[0].FullScaleCounts,
        NoiseSamples.Of(answers[(int)NoiseSituation.Rest]),
        NoiseSamples.Of(answers[(int)NoiseSituation.CoilsOn]),
        NoiseSamples.Of(answers[(int)NoiseSituation.Release]));
}
