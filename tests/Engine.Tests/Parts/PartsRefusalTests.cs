using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

/// <summary>What no parts can do: why, what is nearest, what would mend it.</summary>
public sealed class PartsRefusalTests
{
    private static readonly string LineShaft = ShippedCase.Text("line-shaft");

    [Fact]
    public void Choose_TooFewStages_NamesTheLeastPeakOfEveryCount()
    {
        CaseProblem problem = Refusal(LineShaft.Replace("slack = \"last section\"", "stages = 2", StringComparison.Ordinal), new PartsRequest { Series = PreferredSeries.E96, PartsPerSection = 2 });

        // The closed form of the geometric starter, I1^(n+1) = I2^n (V - Vb)/Ra: 90 A and 218 V over 0.17 ohm.
        Assert.Equal("starter.peak-current", problem.Key);
        foreach (int stages in (int[])[2, 3, 4])
        {
            double least = Math.Pow(Math.Pow(90, stages) * 218 / 0.17, 1.0 / (stages + 1));
            Assert.Contains(Text.Number(least) + " A", problem.Found, StringComparison.Ordinal);
        }

        Assert.Contains("no design meets with 2 stages", problem.Found, StringComparison.Ordinal);
        Assert.Contains("with 4 stages", problem.Found, StringComparison.Ordinal);
        Assert.DoesNotContain("with 5 stages", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_SeriesTooCoarse_NamesTheNearestAndWhatMeetsIt()
    {
        CaseProblem problem = Refusal(LineShaft, new PartsRequest { Series = PreferredSeries.E24 });

        Assert.Contains("the least peak is 156.1 A, sections 0.56 ohm, 0.36 ohm, 0.2 ohm, 0.12 ohm", problem.Found, StringComparison.Ordinal);
        Assert.Contains("up to 2 parts to a section, which meets it", problem.Allowed, StringComparison.Ordinal);
        // What it says it does.
        Assert.True(PartsCases.Choose(CaseFile.Parse("case.toml", LineShaft), new PartsRequest { Series = PreferredSeries.E24, PartsPerSection = 2 }).Designed.Design.WorstPeakAmps <= 155);
    }

    [Fact]
    public void Choose_PartsTooWeak_NamesEachWithItsNumbers()
    {
        CaseProblem problem = Refusal(LineShaft, new PartsRequest { Stock = PartsCases.Stock((0.59, 300, 5000, 1, null), (0.34, 300, 50_000, 1, null), (0.2, 300, 50_000, 1, null), (0.11, 300, 50_000, 1, null)) });

        Assert.Contains("P1 in section 1 would take 95", problem.Found, StringComparison.Ordinal);
        Assert.Contains("J in a start of its 5000 J", problem.Found, StringComparison.Ordinal);
        Assert.DoesNotContain("P2 in section", problem.Found, StringComparison.Ordinal);
        Assert.Contains("parts of more joules", problem.Allowed, StringComparison.Ordinal);
    }

    // The first section takes 9.5 kJ. In parallel 0.885 ohm has two thirds of it and 1.77 ohm one third; in series 0.41 ohm has 69 % and
    // 0.18 ohm 31 %.
    [Theory]
    [InlineData(0.885, 6700, 1.77, 3350, true)]
    [InlineData(0.885, 6000, 1.77, 9000, false)]
    [InlineData(0.885, 9000, 1.77, 3000, false)]
    [InlineData(0.41, 7000, 0.18, 3100, true)]
    [InlineData(0.41, 6300, 0.18, 9000, false)]
    [InlineData(0.41, 9000, 0.18, 2700, false)]
    public void Choose_TwoPartsForASection_HoldsEachAgainstItsOwnHeat(double firstOhms, double firstJoules, double secondOhms, double secondJoules, bool isEnough)
    {
        StockList stock = PartsCases.Stock((firstOhms, 10_000, firstJoules, 1, 1), (secondOhms, 10_000, secondJoules, 1, 1), (0.34, 10_000, 50_000, 1, 1), (0.2, 10_000, 50_000, 1, 1), (0.11, 10_000, 50_000, 1, 1));
        PartsRequest request = new() { Stock = stock, PartsPerSection = 2, Objective = PartsObjective.Count };

        if (isEnough)
        {
            Assert.Equal(2, PartsCases.Choose(CaseFile.Parse("case.toml", LineShaft), request).Sections[0].Network.Count);
        }
        else
        {
            Assert.Contains(firstJoules < secondJoules ? "P1 in section 1 would take" : "P2 in section 1 would take", Refusal(LineShaft, request).Found, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Choose_TooManyStartsAnHour_CountsTheMeanPower()
    {
        StockList stock = PartsCases.Stock((0.59, 300, 50_000, 1, null), (0.34, 300, 50_000, 1, null), (0.2, 300, 50_000, 1, null), (0.11, 300, 50_000, 1, null));

        PartsCases.Choose(CaseFile.Parse("case.toml", LineShaft), new PartsRequest { Stock = stock, StartsPerHour = 60 });
        // About 9.5 kJ: 19 % of the pulse, and 317 W of 300 at 120 starts an hour.
        CaseProblem problem = Refusal(LineShaft, new PartsRequest { Stock = stock, StartsPerHour = 120 });

        Assert.Contains("at 120 starts an hour", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_NotEnoughOfAPart_SaysHowMany()
    {
        // 0.59 ohm is needed, two of 0.295 in series.
        CaseProblem problem = Refusal(LineShaft, new PartsRequest
        {
            PartsPerSection = 2,
            Objective = PartsObjective.Count,
            Stock = PartsCases.Stock((0.295, 300, 50_000, 1, 1), (0.34, 300, 50_000, 1, 1), (0.2, 300, 50_000, 1, 1), (0.11, 300, 50_000, 1, 1)),
        });

        Assert.Contains("2 of P1, of which there are 1: sections P1 + P1, P2, P3, P4", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_NothingNearASection_SaysWhichAndItsRange()
    {
        CaseProblem problem = Refusal(LineShaft, new PartsRequest { Stock = PartsCases.Stock((0.59, 300, 50_000, 1, null), (0.34, 300, 50_000, 1, null), (0.2, 300, 50_000, 1, null)) });

        Assert.Contains("no value for section 4, which has to lie between", problem.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slack = \"last section\"", "sections = [\"0.5 ohm\", \"0.3 ohm\"]", "starter.sections")]
    [InlineData("slack = \"last section\"", "cutout-voltages = [\"90 V\", \"140 V\"]", "starter.cutout-voltages")]
    public void Choose_CaseWithSectionsOrThresholds_IsRefused(string found, string replacement, string key) =>
        Assert.Equal(key, Refusal(LineShaft.Replace(found, replacement, StringComparison.Ordinal), new PartsRequest { Series = PreferredSeries.E24 }).Key);

    [Fact]
    public void Choose_TooManyNetworks_IsRefused() =>
        Assert.Contains("more than 400000 networks", Refusal(LineShaft, new PartsRequest { Series = PreferredSeries.E96, PartsPerSection = 4 }).Found, StringComparison.Ordinal);

    [Theory]
    [InlineData("[starter]", "[starter]")]
    [InlineData("[starter]", "[ starter ] # head")]
    public void Choose_Case_KeepsEveryLineOfTheCase(string found, string replacement)
    {
        string text = LineShaft.Replace(found, replacement, StringComparison.Ordinal);

        PartsChoice choice = PartsCases.Choose(CaseFile.Parse("case.toml", text), new PartsRequest { Series = PreferredSeries.E96 });

        string[] added = [.. choice.File.SourceText.Split('\n').Except(text.Split('\n'))];
        Assert.Empty(text.Split('\n').Except(choice.File.SourceText.Split('\n')));
        Assert.Equal(6, added.Length);
        Assert.Contains(added, line => line.StartsWith("sections = [", StringComparison.Ordinal));
    }

    [Fact]
    public void Choose_StarterOfDottedKeys_GetsDottedSections()
    {
        const string text = "supply.voltage = \"220 V\"\nstarter.peak-current = \"40 A\"\nstarter.stages = 6\n[motor]\narmature-resistance = \"0.5 ohm\"\n";

        PartsChoice choice = PartsCases.Choose(CaseFile.Parse("case.toml", text), new PartsRequest { Series = PreferredSeries.E24, PartsPerSection = 2 });

        Assert.Contains("\nstarter.sections = [", choice.File.SourceText, StringComparison.Ordinal);
        Assert.Contains("\nstarter.switching-current = \"24.1", choice.File.SourceText, StringComparison.Ordinal);
    }

    private static CaseProblem Refusal(string text, PartsRequest request) =>
        Assert.Single(Assert.Throws<CaseException>(() => PartsCases.Choose(CaseFile.Parse("case.toml", text), request)).Problems);
}
