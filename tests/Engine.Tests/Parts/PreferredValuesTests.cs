using System;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

/// <summary>Preferred values against IEC 60063. Source: tests/published/SOURCES.md, CHK-23.</summary>
public sealed class PreferredValuesTests
{
    // The six sections of Theraja's starter: 220 V, 0.5 ohm, 40 A.
    private static readonly DesignInput Theraja = new() { SupplyVolts = 220, ArmatureOhms = 0.5, PeakAmps = 40, StageCount = 6 };

    [Fact]
    [Trait("Source", "CHK-23")]
    public void Decade_UpToE24_IsTheTable()
    {
        Assert.Equal([10, 15, 22, 33, 47, 68], PreferredValues.Decade(PreferredSeries.E6));
        Assert.Equal([10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82], PreferredValues.Decade(PreferredSeries.E12));
        Assert.Equal(
            [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
            PreferredValues.Decade(PreferredSeries.E24));
    }

    [Fact]
    [Trait("Source", "CHK-23")]
    public void Decade_E24_LeavesTheRoundedPowersInEightPlaces()
    {
        int[] rounded = [.. Enumerable.Range(0, 24).Select(i => (int)Math.Round(10 * Math.Pow(10, i / 24.0)))];

        Assert.Equal([27, 30, 33, 36, 39, 43, 47, 82], PreferredValues.Decade(PreferredSeries.E24).Except(rounded));
    }

    [Theory]
    [InlineData(PreferredSeries.E48, new[] { 100, 105, 110, 115, 121, 127, 133, 140 }, 953)]
    [InlineData(PreferredSeries.E96, new[] { 100, 102, 105, 107, 110, 113, 115, 118 }, 976)]
    [Trait("Source", "CHK-23")]
    public void Decade_AboveE24_IsTheRoundedFormula(PreferredSeries series, int[] first, int last)
    {
        int[] decade = [.. PreferredValues.Decade(series)];

        Assert.Equal((int)series, decade.Length);
        Assert.Equal(first, decade[..first.Length]);
        Assert.Equal(last, decade[^1]);
        Assert.All(decade, (value, i) => Assert.Equal(100 * Math.Pow(10, i / (double)(int)series), value, 0.5));
    }

    [Fact]
    [Trait("Source", "CHK-23")]
    public void Nearest_SixSectionsOfTheraja_AreThePrintedValues()
    {
        StarterDesign design = StarterDesigner.Design(Theraja);

        Assert.Equal([1.8, 1.2, 0.82, 0.56, 0.36, 0.24], design.Stages.Select(stage => PreferredValues.Nearest(PreferredSeries.E24, stage.SectionOhms)));
    }

    [Fact]
    [Trait("Source", "CHK-23")]
    public void Design_SixRoundedSections_RecomputesEveryPeak()
    {
        const double switching = 26.82;

        StarterDesign design = StarterDesigner.Design(Theraja with { StageCount = null, PeakAmps = null, SwitchingAmps = switching, SectionOhms = [1.8, 1.2, 0.82, 0.56, 0.36, 0.24] });

        // By hand: totals 5.48, 3.68, 2.48, 1.66, 1.10, 0.74, 0.5 ohm; 220/5.48, then 26.82 times the ratio of each to the next.
        double[] peaks = [40.146, 39.938, 39.797, 40.068, 40.474, 39.868, 39.694];
        Assert.Equal(peaks, [.. design.Stages.Select(stage => stage.PeakAmps), design.FinalPeakAmps], (expected, actual) => Math.Abs(expected - actual) <= 0.001);
        Assert.Equal(40.474, design.WorstPeakAmps, 0.001);
    }

    [Fact]
    public void Between_OverDecades_IsWhatTheDecimalsSay() =>
        Assert.Equal([0.082, 0.1, 0.12, 0.15, 0.18, 0.22, 0.27, 0.33, 0.39, 0.47, 0.56, 0.68, 0.82, 1, 1.2], PreferredValues.Between(PreferredSeries.E12, 0.08, 1.2));
}
