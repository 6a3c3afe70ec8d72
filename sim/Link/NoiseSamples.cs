using System;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>What the samples of a channel in one situation come to, in counts.</summary>
/// <param name="Count">How many samples.</param>
/// <param name="Lowest">Smallest.</param>
/// <param name="Highest">Largest.</param>
/// <param name="Mean">Mean.</param>
/// <param name="Deviation">Standard deviation.</param>
/// <param name="LargestStep">Largest change from one control period to the next.</param>
public sealed record NoiseSamples(int Count, int Lowest, int Highest, float Mean, double Deviation, int LargestStep)
{
    /// <summary>Largest sample less the smallest.</summary>
    public int Spread => Highest - Lowest;

    internal static NoiseSamples Of(NoiseAnswer answer) =>
        new(answer.Count, answer.Lowest, answer.Highest, answer.Mean, Math.Sqrt(answer.Variance), answer.LargestStep);
}
