using System;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

/// <summary>What parts in a network take. Kirchhoff's laws; no source needed.</summary>
public sealed class NetworkTests
{
    [Fact]
    public void Burdens_OfMixedNetworks_FollowFromTheirValues()
    {
        PartsChoice choice = PartsCases.Choose(PartsCases.Theraja, new PartsRequest { Series = PreferredSeries.E6, PartsPerSection = 3 });

        Assert.Contains(choice.Sections, section => section.Network.Count == 3);
        foreach (BoughtSection section in choice.Sections)
        {
            double joules = choice.Designed.Design.Stages[section.Stage - 1].EnergyJoules!.Value;
            Assert.Equal(joules, section.Burdens.Sum(burden => burden.Joules!.Value), 1e-9 * joules);
            // Each part's heat is U^2/R of its own voltage, so all have the same heat over U^2/R.
            double[] seconds = [.. section.Burdens.Select(burden => burden.Joules!.Value / (burden.WorstVolts * burden.WorstVolts / burden.Part.Ohms))];
            Assert.All(seconds, second => Assert.Equal(seconds[0], second, 1e-9 * seconds[0]));
        }
    }

    [Fact]
    public void WorstVolts_OfASection_AreThoseOfTheHighestCurrentWhileItIsIn()
    {
        PartsChoice choice = PartsCases.Choose(PartsCases.Chapman, new PartsRequest { Series = PreferredSeries.E24, PartsPerSection = 2 });

        double[] peaks = [.. choice.Designed.Design.Stages.Select(stage => stage.PeakAmps)];
        Assert.Equal(choice.Sections.Select(section => section.Network.Ohms * peaks[..section.Stage].Max()), choice.Sections.Select(section => section.WorstVolts));
    }

    // The exact course of a body of one temperature; the rule may only be on the safe side of it.
    [Theory]
    [InlineData(300, 12_000, 5_000, 6)]
    [InlineData(300, 12_000, 5_000, 60)]
    [InlineData(50, 900, 500, 20)]
    [InlineData(50, 50_000, 500, 300)]
    public void Share_OfARating_IsNeverLessThanTheRiseOfABody(double watts, double joules, double startJoules, double startsPerHour)
    {
        const double kelvin = 250;
        double pause = PartRating.HourSeconds / startsPerHour, coolingSeconds = joules / watts;
        ThermalBody body = new(new ThermalMass(joules / kelvin, coolingSeconds), 0);
        double highest = 0;
        for (int start = 0; start < 2000; start++)
        {
            body.Advance(1e-6, startJoules, 0);
            highest = Math.Max(highest, body.Celsius / kelvin);
            body.Advance(pause, 0, 0);
        }

        double share = new PartRating(watts, joules).Share(startJoules, startsPerHour);
        Assert.InRange(share, highest * (1 - 1e-6), 2 * highest);
    }
}
