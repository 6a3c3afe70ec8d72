using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

public sealed class PartsDesignerTests
{
    private const double StartsPerHour = 6;

    // A draw is thousands of designs.
    private const int Draws = 3;

    // Source: none needed; every combination is tried, with networks, burdens and stock counted by this test.
    [Theory]
    [InlineData(PartsObjective.Peak, false)]
    [InlineData(PartsObjective.Price, false)]
    [InlineData(PartsObjective.Count, false)]
    [InlineData(PartsObjective.Peak, true)]
    [InlineData(PartsObjective.Price, true)]
    [InlineData(PartsObjective.Count, true)]
    public void Choose_AnySmallStock_IsTheBestOfAllCombinations(PartsObjective objective, bool isSeries)
    {
        Gen.Double[0, 1].Array[40].Sample(u =>
        {
            (CaseFile file, PartsRequest request) = Draw(u, isSeries, objective);
            BruteForce.Choice? best = BruteForce.Best(file, request);
            PartsChoice? choice = TryChoose(file, request, out string refusal);

            Assert.True((best == null) == (choice == null), $"{best}: {refusal}");
            if (choice == null || best == null) return;
            Assert.True(choice.IsProven);
            // Peaks count in millionths; ties are then decided by price and count.
            Assert.Equal(best.PeakAmps, choice.Designed.Design.WorstPeakAmps, 2e-6 * best.PeakAmps);
            Assert.Equal(best.Price, choice.Price);
            Assert.Equal(best.Count, choice.Count);
        }, iter: Draws, threads: 1);
    }

    [Theory]
    [InlineData("chapman")]
    [InlineData("theraja")]
    [Trait("Source", "CHK-01, CHK-02")]
    public void Run_BoughtSections_HasTheDesignedPeaks(string name)
    {
        CaseFile file = name == "chapman" ? PartsCases.Chapman : PartsCases.Theraja;

        PartsChoice choice = PartsCases.Choose(file, new PartsRequest { Series = PreferredSeries.E24, PartsPerSection = 2 });
        StartStudy study = CaseRunner.Run(choice.File, null, TestContext.Current.CancellationToken);

        StarterDesign design = choice.Designed.Design;
        Assert.Equal(choice.Sections.Select(section => section.Network.Ohms), design.Stages.Select(stage => stage.SectionOhms), (expected, actual) => Math.Abs(expected - actual) < 1e-12);
        double[] peaks = [.. design.Stages.Skip(1).Select(stage => stage.PeakAmps), design.FinalPeakAmps];
        Assert.Equal(peaks.Length, study.Result.Cutouts.Count);
        // A decision comes up to a period of 20 us late: the next peak is then at most this much below the designed one.
        for (int i = 0; i < peaks.Length; i++) Assert.InRange(study.Result.Cutouts[i].PeakAmpsAfter, peaks[i] * (1 - 5e-4), peaks[i] * (1 + 1e-6));
        Assert.Equal(design.WorstPeakAmps, study.Result.PeakAmps, 5e-4 * design.WorstPeakAmps);
        Assert.True(study.Verdict.Passed);
        for (int i = 0; i < peaks.Length; i++) Assert.Equal(design.Stages[i].EnergyJoules!.Value, study.Result.SectionJoules[i], 2e-3 * design.Stages[i].EnergyJoules!.Value);
    }

    [Fact]
    public void Choose_EveryObjective_IsLeastInItsOwn()
    {
        CaseFile file = CaseFile.Read(ShippedCase.PathOf("line-shaft.toml"));
        StockList stock = StockList.Read(ShippedCase.PathOf("stock.csv"), false);

        PartsChoice[] choices = [.. Enum.GetValues<PartsObjective>().Select(objective => PartsCases.Choose(file, new PartsRequest { Stock = stock, PartsPerSection = 2, Objective = objective }))];

        Assert.All(choices, choice => Assert.True(choice.IsProven && choice.Designed.Design.WorstPeakAmps <= 155));
        Assert.All(choices.SelectMany(choice => choice.Sections).SelectMany(section => section.Burdens), burden => Assert.InRange(burden.Share!.Value, 0, 1));
        Assert.Equal(choices.Min(choice => choice.Designed.Design.WorstPeakAmps), choices[0].Designed.Design.WorstPeakAmps);
        Assert.Equal(choices.Min(choice => choice.Price), choices[1].Price);
        Assert.Equal(choices.Min(choice => choice.Count), choices[2].Count);
        Assert.Equal(3, choices.Select(choice => choice.Price).Distinct().Count());
    }

    [Fact]
    public void Choose_Twice_IsTheSame()
    {
        PartsRequest request = new() { Series = PreferredSeries.E12, PartsPerSection = 3 };

        Assert.Equal(PartsCases.Choose(PartsCases.Chapman, request).File.SourceText, PartsCases.Choose(PartsCases.Chapman, request).File.SourceText);
    }

    private static PartsChoice? TryChoose(CaseFile file, PartsRequest request, out string refusal)
    {
        refusal = "";
        try
        {
            return PartsCases.Choose(file, request);
        }
        catch (CaseException error)
        {
            refusal = error.Message;
            return null;
        }
    }

    // Parts near the sections that are wanted, so that some fit and some do not.
    private static (CaseFile File, PartsRequest Request) Draw(double[] u, bool isSeries, PartsObjective objective)
    {
        string starter = u[0] < 0.5 ? "peak-current = \"100 A\"\nstages = 3" : "peak-current = \"104 A\"\nswitching-current = \"45 A\"";
        CaseFile file = isSeries ? Series(u) : PartsCases.Of(220, 0.25 + 0.1 * u[1], 1.6, 2 + 3 * u[2], 20 * u[3], starter);
        CaseDesign wanted = CaseDesign.Of(file);
        int perSection = u[5] < 0.4 ? 1 : 2, parts = perSection == 1 ? 4 + (int)(3 * u[4]) : isSeries ? 3 : 4;
        (double Ohms, double Watts, double Joules, double Price, int? Quantity)[] rows = [.. Enumerable.Range(0, parts).Select(i =>
        {
            DesignedStage near = wanted.Design.Stages[i % wanted.Design.StageCount];
            double ohms = Math.Round(near.SectionOhms * (0.75 + 0.5 * u[6 + i]) * (perSection == 2 && u[14 + i] < 0.5 ? 2 * u[14 + i] + 0.3 : 1), 3);
            return (ohms, 30 + 200 * u[22 + i], near.EnergyJoules!.Value * (0.4 + 1.6 * u[22 + i]), 1 + Math.Round(6 * u[30 + i]), u[30 + i] < 0.3 ? 1 : (int?)null);
        })];
        return (file, new PartsRequest { Stock = PartsCases.Stock(rows), PartsPerSection = perSection, Objective = objective, StartsPerHour = StartsPerHour });
    }

    private static CaseFile Series(double[] u) => CaseFile.Parse("case.toml", FormattableString.Invariant($$"""
        [supply]
        voltage = "220 V"
        [motor]
        kind = "series"
        rated-current = "60 A"
        armature-resistance = "{{0.2 + 0.1 * u[1]}} ohm"
        inertia = "{{2 + 3 * u[2]}} kg m2"
        [series-field]
        resistance = "0.08 ohm"
        [field]
        curve-currents = ["0 A", "20 A", "45 A", "70 A", "120 A"]
        curve-constants = ["0.08 V s/rad", "0.7 V s/rad", "1.2 V s/rad", "1.45 V s/rad", "1.6 V s/rad"]
        [load]
        constant-torque = "{{15 + 20 * u[3]}} N m"
        [starter]
        {{(u[0] < 0.5 ? "peak-current = \"100 A\"\nstages = 3" : "peak-current = \"104 A\"\nswitching-current = \"50 A\"")}}
        """));
}
