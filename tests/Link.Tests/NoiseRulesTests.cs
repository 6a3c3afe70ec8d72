using System.Linq;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>What the noise of a 12-bit channel says. All rules and numbers: common practice, no source.</summary>
public sealed class NoiseRulesTests
{
    private static readonly NoiseSamples Quiet = new(1000, 2047, 2049, 2048f, 0.8, 2);

    [Fact]
    public void QuietChannel_SaysNothing() => Assert.Empty(NoiseRules.Judge(Noise()));

    [Theory]
    [InlineData(40, false)]
    [InlineData(41, true)]
    public void SpreadAtRest_AboveOnePerCent_IsNoiseAtRest(int spread, bool isFound)
    {
        // 1 % of 4095 are 40.95 counts.
        NoiseSamples rest = Quiet with { Lowest = 2000, Highest = 2000 + spread };

        Assert.Equal(isFound ? ["noise at rest"] : [], Patterns(Noise(rest: rest)));
    }

    [Theory]
    [InlineData(2068.4f, false)]
    [InlineData(2068.6f, true)]
    [InlineData(2027.4f, true)]
    public void Mean_MovedByMoreThanHalfAPerCent_IsAShift(float mean, bool isFound)
    {
        // 0.5 % of 4095 are 20.475 counts.
        Assert.Equal(isFound ? ["shift with coils on"] : [], Patterns(Noise(coilsOn: Quiet with { Mean = mean })));
    }

    [Theory]
    [InlineData(0.8, 8.1, false)]
    [InlineData(0.8, 8.2, true)]
    [InlineData(3.0, 8.9, false)]
    [InlineData(2.9, 8.9, true)]
    public void Deviation_ThreeTimesThatAtRest_IsNoiseOfTheCoils(double rest, double coilsOn, bool isFound)
    {
        // 0.2 % of 4095 are 8.19 counts.
        Assert.Equal(isFound ? ["noise with coils on"] : [], Patterns(Noise(Quiet with { Deviation = rest }, Quiet with { Deviation = coilsOn })));
    }

    [Theory]
    [InlineData(2, 204, false)]
    [InlineData(2, 205, true)]
    [InlineData(60, 240, false)]
    [InlineData(60, 241, true)]
    public void Step_AtRelease_IsAMissingSuppressor(int rest, int release, bool isFound)
    {
        // 5 % of 4095 are 204.75 counts.
        NoiseFinding? finding = NoiseRules.Judge(Noise(Quiet with { LargestStep = rest }, release: Quiet with { LargestStep = release })).SingleOrDefault();

        Assert.Equal(isFound, finding != null);
        if (finding == null) return;
        Assert.Equal($"step of {release} counts at the release of a coil, {rest} at rest (allowed: 5 % of the range, 204.8 counts)", finding.Found);
        Assert.Contains("suppressor", finding.Meaning, System.StringComparison.Ordinal);
        Assert.Contains("diode", finding.Remedy, System.StringComparison.Ordinal);
    }

    [Fact]
    public void Channel_ThatNeverMoves_HasNoLife()
    {
        NoiseSamples dead = new(1000, 2048, 2048, 2048f, 0, 0);

        Assert.Equal(["no life"], Patterns(new ChannelNoise(CalibrationChannel.SupplyVolts, 4095, dead, dead, dead)));
    }

    [Theory]
    [InlineData(49, "no rest")]
    [InlineData(50, "noise at rest")]
    public void Rest_OfTooFewSamples_SaysNothingElse(int count, string pattern) =>
        Assert.Equal([pattern], Patterns(Noise(rest: Quiet with { Count = count, Highest = 3000 })));

    [Fact]
    public void OtherSituations_OfTooFewSamples_AreLeftOut()
    {
        NoiseSamples few = Quiet with { Count = 49, Mean = 3000f, Deviation = 500, LargestStep = 900 };

        Assert.Empty(NoiseRules.Judge(Noise(coilsOn: few, release: few)));
    }

    private static string[] Patterns(ChannelNoise noise) => [.. NoiseRules.Judge(noise).Select(finding => finding.Pattern)];

    private static ChannelNoise Noise(NoiseSamples? rest = null, NoiseSamples? coilsOn = null, NoiseSamples? release = null) =>
        new(CalibrationChannel.ArmatureAmps, 4095, rest ?? Quiet, coilsOn ?? Quiet, release ?? Quiet);
}
