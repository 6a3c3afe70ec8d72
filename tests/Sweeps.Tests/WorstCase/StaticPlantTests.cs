using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.House;
using StarterCtl.Sweeps.WorstCase;
using Xunit;

namespace StarterCtl.Sweeps.Tests.WorstCase;

/// <summary>Where one plant is cut out, by sums on paper: 250 V, 0.05 ohm, k = 2.5 V s/rad.</summary>
public sealed class StaticPlantTests
{
    private const double Sections = 0.3, Circuit = 0.35;

    [Fact]
    public void A_current_that_still_rises_when_the_dwell_ends_passes_the_lockout_early()
    {
        // 14 mH through 0.35 ohm settle with 40 ms; after 80 ms exp(-2) of the 700 A may be missing in what is seen.
        StaticPlant plant = Plant(("constant = \"2.5 V s/rad\"", "constant = \"2.5 V s/rad\"\narmature-inductance = \"14 mH\""));
        double seenAs = 350 + 700 * Math.Exp(-2);
        Assert.Equal(0.04, plant.SettlingSeconds(7), 1e-12);
        Assert.Equal((250 - seenAs * Circuit) / 2.5, plant.EarliestCutout(Sections, 250, new Lockout(350, 0.08), 700), 1e-6);
        Assert.Equal((250 - 350 * Circuit) / 2.5, plant.LatestCutout(Sections, 250, new Lockout(350, 0.08), 700), 1e-6);
    }

    [Fact]
    public void Behind_a_filter_the_supply_may_still_show_the_sag_of_the_peak()
    {
        // 10 mohm of 700 A are 7 V; at the latest it shows the sag of the current that flows.
        StaticPlant plant = Plant(("resistance = \"0 ohm\"", "resistance = \"10 mohm\""), ("[run]", "[sensors]\nfilter-time = \"1 us\"\n\n[run]"));
        double latest = plant.LatestCutout(Sections, 100, new Lockout(double.PositiveInfinity, 1), 700), amps = (250 - 2.5 * latest) / (Circuit + 0.01);
        Assert.Equal((250 - 7 - 100) / 2.5, plant.EarliestCutout(Sections, 100, new Lockout(double.PositiveInfinity, 1), 700), 1e-6);
        Assert.Equal(100, 250 - 0.01 * amps - 2.5 * latest, 1e-6);
    }

    [Fact]
    public void Noise_counts_as_often_as_the_confirm_time_asks_for_it_in_a_row()
    {
        // One start of a million with 8000 ticks is 1.25e-10 a tick, three in a row 0.0005 each: 3.2905 deviations (tables of the normal distribution).
        StaticPlant plant = Plant(("period = \"1 ms\"", "period = \"1 ms\"\nconfirm-time = \"3 ms\""), ("[run]", "[sensors]\ncurrent-noise = \"2 A\"\nvoltage-noise = \"0.3 V\"\nspeed-noise = \"0.16 rad/s\"\n\n[run]"));
        Assert.Equal(2 * 3.2905, plant.NoiseAmps, 1e-4);
        // 2.5 V s/rad of 0.16 rad/s are 0.4 V: with 0.3 V together 0.5 V.
        Assert.Equal(0.5 * 3.2905, plant.NoiseVolts, 1e-4);
    }

    [Fact]
    public void Without_a_load_a_fiftieth_of_the_peaks_torque_must_be_left()
    {
        StaticPlant plant = Plant(("constant-torque = \"795.4545454545455 N m\"", "constant-torque = \"0 N m\""));
        Assert.Equal((250 - 0.02 * 700 * Circuit) / 2.5, plant.AcceleratedTo(Sections, 0.1, 700)!.Value, 1e-6);
    }

    [Fact]
    public void A_climb_finds_a_place_between_the_limits()
    {
        PlantSpace space = new(CaseRunner.Prepare(WorkshopCase.With("supply.voltage = \"10 %\"\nmotor.constant = \"4 %\"")));
        PlantPoint found = space.Climb(space.Corners[0], point => -Math.Abs(point.Values[0] - 250) - Math.Abs(point.Values[1] - 2.6));
        Assert.Equal([250, 2.6], found.Values, (one, other) => Math.Abs(one - other) < 1e-9);
    }

    [Theory]
    [InlineData("shunt-shaft.toml")]
    [InlineData("crane-travel.toml")]
    public void A_threshold_is_written_so_that_the_controller_holds_the_setting(string name)
    {
        CaseFile file = CaseFile.Parse(name, Repository.Text("sim/cases/" + name));
        PreparedRun prepared = CaseRunner.Prepare(file);
        double[] sections = prepared.Designed.SectionOhms(), settings = [.. prepared.Designed.Design.Stages.Select(stage => 0.97 * stage.VoltsLeft)];
        CaseFile written = WorstCaseFile.Of(prepared.Designed, new Grading(sections, settings, new Lockout(1e4, 0)), 1e4);
        Core.Settings held = CaseRunner.Prepare(written).Settings;
        for (int i = 0; i < settings.Length; i++) Assert.Equal(settings[i], held.VoltsLeft[i], 2e-3);
    }

    [Fact]
    public void Where_the_flux_follows_the_field_no_climb_over_simulated_starts_passes_the_bound_and_one_comes_near()
    {
        CaseFile file = CaseFile.Parse("shunt-shaft.toml", Repository.Text("sim/cases/shunt-shaft.toml"));
        PreparedRun prepared = CaseRunner.Prepare(file);
        PlantSpace space = new(prepared);
        SectionSpan span = SectionSpan.Of(prepared.Variables);
        Grading textbook = new(
            prepared.Designed.SectionOhms(), [.. prepared.Designed.Design.Stages.Select(stage => stage.VoltsLeft)], new Lockout(double.PositiveInfinity, 0));
        PeakFound peak = new GradingBound(textbook, span).Peak(space.Corners);
        double climbed = new SimulatedStarts(file, TestContext.Current.CancellationToken).ClimbPeak(space, peak.Point, span);
        Assert.InRange(climbed, 0.75 * peak.Amps, peak.Amps);
    }

    private static StaticPlant Plant(params (string Found, string Replacement)[] changes) =>
        new PlantSpace(CaseRunner.Prepare(WorkshopCase.With("load.inertia = \"1 kg m2 to 2 kg m2\"", changes))).Corners[0].Plant;
}
