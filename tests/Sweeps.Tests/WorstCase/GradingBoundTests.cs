using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.WorstCase;
using Xunit;

namespace StarterCtl.Sweeps.Tests.WorstCase;

/// <summary>The bound and the search beside sums written down here: Kirchhoff and E = k w for every plant of a grid.</summary>
public sealed class GradingBoundTests
{
    private const string Tolerances = """
        supply.voltage = "-5 % to +10 %"
        supply.resistance = "2 mohm to 8 mohm"
        motor.armature-resistance = "10 %"
        motor.constant = "1 %"
        sensors.speed-gain = "0.5 %"
        sensors.voltage-offset = "1 V"
        """;

    private const double Load = 795.4545454545455;

    private static readonly CaseFile File = WorkshopCase.With(
        Tolerances, ("resistance = \"0 ohm\"", "resistance = \"5 mohm\""), ("period = \"1 ms\"", "period = \"1 ms\"\nlockout-current = \"100000 A\""));

    private static readonly PlantSpace Space = new(CaseRunner.Prepare(File));

    [Fact]
    public void No_plant_of_a_fine_grid_passes_the_bound_and_its_corner_reaches_it()
    {
        Grading grading = Found(0.1).Grading;
        GradingBound bound = new(grading, SectionSpan.Exact);
        double most = Grid(5).Max(plant => Peak(plant, grading)), corners = bound.Peak(Space.Corners).Amps;
        Assert.Equal(64, Space.Corners.Count);
        Assert.Equal(corners, most, 1e-6 * most);
        Assert.Equal(Found(0.1).PeakAmps, corners, 2e-5 * corners);
    }

    [Fact]
    public void No_other_sections_and_thresholds_near_by_have_a_lower_peak_and_still_end_every_stage()
    {
        (Grading grading, double peak) = Found(0.1);
        double[][] plants = [.. Grid(2)];
        Assert.All(plants, plant => Assert.True(Ends(plant, grading)));
        Random random = new(4);
        int endless = 0, higher = 0;
        for (int i = 0; i < 4000; i++)
        {
            double size = Math.Pow(10, -1 - 2 * random.NextDouble());
            Grading other = grading with { SectionOhms = Near(grading.SectionOhms), VoltsLeft = Near(grading.VoltsLeft) };
            if (!Array.TrueForAll(plants, plant => Ends(plant, other))) endless++;
            else if (plants.Max(plant => Peak(plant, other)) > peak * (1 - 1e-4)) higher++;

            double[] Near(IReadOnlyList<double> values) => [.. values.Select(value => value * (1 + size * (2 * random.NextDouble() - 1)))];
        }

        Assert.Equal(4000, endless + higher);
        Assert.True(endless > 400 && higher > 100);
    }

    [Fact]
    public void The_least_torque_over_the_loads_is_what_was_asked_for()
    {
        foreach (double spare in new[] { 0.1, 0.25, 0.5 })
        {
            Assert.Equal(1 + spare, new GradingBound(Found(spare).Grading, SectionSpan.Exact).LeastRatio(Space.Corners).Ratio, 1e-4);
        }
    }

    [Fact]
    public void A_lockout_above_the_range_of_the_current_sensor_holds_nothing_back()
    {
        double Earliest(string range, double lockoutAmps)
        {
            CaseFile file = WorkshopCase.With(Tolerances, ("[run]", $"[sensors]\ncurrent-range = \"{range}\"\n\n[run]"));
            StaticPlant plant = new PlantSpace(CaseRunner.Prepare(file)).Corners[0].Plant;
            return plant.EarliestCutout(0.3, 150, new Lockout(lockoutAmps, 1), 700);
        }

        double free = Earliest("3000 A", double.PositiveInfinity);
        Assert.True(Earliest("3000 A", 350) > free + 1);
        Assert.Equal(free, Earliest("300 A", 350));
        Assert.True(Earliest("300 A", 250) > free + 1);
    }

    private static (Grading Grading, double PeakAmps) Found(double spare) =>
        new GradingSearch(Space.Corners, SectionSpan.Exact, spare, 1e5, 0, CancellationToken.None).Lowest(2)!.Value;

    // V, Rs, Ra, k, speed gain, voltage offset.
    private static IEnumerable<double[]> Grid(int levels)
    {
        (double Low, double High)[] limits = [(237.5, 275), (0.002, 0.008), (0.045, 0.055), (2.475, 2.525), (0.995, 1.005), (-1, 1)];
        for (int n = 0; n < Math.Pow(levels, limits.Length); n++)
        {
            int rest = n;
            double[] plant = new double[limits.Length];
            for (int d = 0; d < plant.Length; d++, rest /= levels) plant[d] = limits[d].Low + (limits[d].High - limits[d].Low) * (rest % levels) / (levels - 1);
            yield return plant;
        }
    }

    // Terminal volts V - Rs (V - k w) / A less c against 2.5 times the measured speed: linear in w.
    private static double CutoutSpeed(double[] p, double total, double voltsLeft) =>
        (p[0] - p[1] * p[0] / total + p[5] - voltsLeft) / (WorkshopCase.Constant * p[4] - p[1] * p[3] / total);

    private static double Peak(double[] p, Grading grading)
    {
        double peak = p[0] / (p[1] + p[2] + grading.InCircuit(0));
        for (int i = 0; i < grading.StageCount; i++)
        {
            double speed = CutoutSpeed(p, p[1] + p[2] + grading.InCircuit(i), grading.VoltsLeft[i]);
            peak = Math.Max(peak, (p[0] - p[3] * speed) / (p[1] + p[2] + grading.InCircuit(i + 1)));
        }

        return peak;
    }

    private static bool Ends(double[] p, Grading grading)
    {
        for (int i = 0; i < grading.StageCount; i++)
        {
            double total = p[1] + p[2] + grading.InCircuit(i), speed = CutoutSpeed(p, total, grading.VoltsLeft[i]);
            if (p[3] * (p[0] - p[3] * speed) / total < 1.1 * Load * (1 - 1e-6)) return false;
        }

        return true;
    }
}
