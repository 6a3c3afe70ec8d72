using System;
using System.Linq;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>The figures of the noise against the same figures by their definitions, in double precision.</summary>
public sealed class NoiseCheckTests
{
    private const CalibrationChannel Volts = CalibrationChannel.SupplyVolts;

    private readonly CalibratedChannel[] _channels = CalibrationBench.Channels();
    private readonly NoiseCheck _noise;

    public NoiseCheckTests()
    {
        _noise = new NoiseCheck(_channels);
    }

    [Fact]
    public void Figures_OfTenThousandSamples_AreThoseByDefinition()
    {
        Random random = new(4);
        int[] samples = [.. Enumerable.Range(0, 10_000).Select(_ => 3000 + random.Next(-30, 31))];
        _noise.Begin();
        foreach (int sample in samples) Step(sample, NoiseSituation.Rest);
        NoiseFigures figures = _noise.Figures(Volts, NoiseSituation.Rest);
        double mean = samples.Average();

        Assert.Equal((10_000, samples.Min(), samples.Max()), (figures.Count, figures.Lowest, figures.Highest));
        Assert.Equal(samples.Zip(samples.Skip(1), (first, second) => Math.Abs(second - first)).Max(), figures.LargestStep);
        Assert.Equal(mean, figures.Mean, 0.01);
        Assert.Equal(1.0, figures.Variance / (samples.Sum(sample => (sample - mean) * (sample - mean)) / 9999), 0.001);
    }

    [Fact]
    public void Samples_GoToTheirSituationAndChannel()
    {
        _noise.Begin();
        Step(100, NoiseSituation.Rest);
        Step(102, NoiseSituation.None);
        Step(110, NoiseSituation.CoilsOn);
        Step(190, NoiseSituation.Release);
        Step(150, NoiseSituation.Release);

        Assert.Equal((1, 100, 100, 0), Figures(NoiseSituation.Rest));
        Assert.Equal((1, 110, 110, 8), Figures(NoiseSituation.CoilsOn));
        Assert.Equal((2, 150, 190, 80), Figures(NoiseSituation.Release));
        Assert.Equal(0, _noise.Figures(CalibrationChannel.FieldAmps, NoiseSituation.Rest).Count);
    }

    [Fact]
    public void Variance_OfOneTwoThree_IsOne()
    {
        _noise.Begin();
        for (int sample = 1; sample <= 3; sample++) Step(sample, NoiseSituation.Rest);

        Assert.Equal((2f, 1f), (_noise.Figures(Volts, NoiseSituation.Rest).Mean, _noise.Figures(Volts, NoiseSituation.Rest).Variance));
    }

    [Fact]
    public void Variance_OfOneSample_IsZero()
    {
        _noise.Begin();
        Step(100, NoiseSituation.Rest);

        Assert.Equal(0f, _noise.Figures(Volts, NoiseSituation.Rest).Variance);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(4096)]
    public void Sample_ThatCouldNotBeRead_IsNoneAndMakesNoStep(int counts)
    {
        _noise.Begin();
        Step(100, NoiseSituation.Rest);
        Step(counts, NoiseSituation.Rest);
        Step(500, NoiseSituation.Rest);

        Assert.Equal((2, 100, 500, 0), Figures(NoiseSituation.Rest));
    }

    [Fact]
    public void Recording_BeginsAnewAndEnds()
    {
        Step(100, NoiseSituation.Rest);
        Assert.Equal(0, Figures(NoiseSituation.Rest).Count);
        _noise.Begin();
        Step(100, NoiseSituation.Rest);
        _noise.End();
        Step(900, NoiseSituation.Rest);
        Assert.Equal((1, 100, 100, 0), Figures(NoiseSituation.Rest));
        Assert.False(_noise.IsRecording);

        _noise.Begin();
        Step(200, NoiseSituation.Rest);

        Assert.Equal((1, 200, 200, 0), Figures(NoiseSituation.Rest));
    }

    [Fact]
    public void Samples_BeyondTheMost_ChangeNothing()
    {
        _noise.Begin();
        for (int i = 0; i < NoiseFigures.MostSamples; i++) Step(100, NoiseSituation.Rest);
        Step(900, NoiseSituation.Rest);

        Assert.Equal((10_000, 100, 100, 0), Figures(NoiseSituation.Rest));
    }

    private void Step(int counts, NoiseSituation situation)
    {
        _channels[(int)Volts].Counts = counts;
        _noise.Step(situation);
    }

    private (int Count, int Lowest, int Highest, int LargestStep) Figures(NoiseSituation situation)
    {
        NoiseFigures figures = _noise.Figures(Volts, situation);
        return (figures.Count, figures.Lowest, figures.Highest, figures.LargestStep);
    }
}
