using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>Temperatures over starts, and how many are permitted. Sources: tests/published/SOURCES.md, CHK-37 and CHK-42.</summary>
public sealed class DutyTests
{
    // Without cooling and coefficient a section rises by its Joule integral over its capacity, R times the integral of i^2 over C.
    [Fact]
    [Trait("Source", "CHK-42")]
    public void FirstStart_WithoutCooling_RisesByTheJouleIntegralOverTheCapacity()
    {
        RunResult run = LineShaftCase.Run(LineShaftCase.With()).Result;
        DutyStudy heat = Heat(("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-hot-spot-limit", "375 degC"));

        Assert.Equal(["section 1", "section 2", "section 3", "section 4"], heat.Bodies.Select(body => body.Name));
        for (int i = 0; i < 4; i++) Assert.Equal(20 + run.SectionJoules[i] / 250, heat.FirstStart.HighestCelsius[i], 1e-6);
        Assert.Equal(58, heat.FirstStart.HighestCelsius[0], 2.0);
    }

    // Each start then adds the same rise, so floor((375 - 20) / rise) starts are permitted in a row, and no number for ever.
    [Fact]
    [Trait("Source", "CHK-42")]
    public void ConsecutiveStarts_WithoutCooling_AreTheLimitOverTheRise()
    {
        DutyStudy heat = Heat(("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-hot-spot-limit", "375 degC"));

        double rise = heat.FirstStart.HighestCelsius.Max() - 20;
        Assert.Equal((int)(355 / rise), heat.ConsecutiveStarts);
        Assert.Equal(0, heat.StartsPerHour);
        Assert.Equal("temperatures rise without end", heat.StartsExcess);
    }

    // The hottest spot rises by the factor more than the mean: half the room, half the starts.
    [Fact]
    public void ConsecutiveStarts_HotSpotFactor_TakesItsShareOfTheRoom()
    {
        DutyStudy heat = Heat(("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-hot-spot-limit", "375 degC"), ("starter.section-hot-spot-factor", "2"));

        Assert.Equal((int)(355 / 2 / (heat.FirstStart.HighestCelsius.Max() - 20)), heat.ConsecutiveStarts);
        Assert.Equal(20 + 2 * (heat.FirstStart.HighestCelsius[0] - 20), heat.Bodies[0].HotSpot(heat.FirstStart.HighestCelsius[0], 20), 1e-9);
    }

    // A rise d at the end of a start, behind it e^(-t/tau): from start to start d e^(-(T - d)/tau) (1 + q + q^2 + ...), q = e^(-T/tau).
    [Theory]
    [Trait("Source", "CHK-42")]
    [InlineData(6)]
    [InlineData(30)]
    public void Duty_SteadyCycle_IsTheSumOfTheGeometricSeries(int startsPerHour)
    {
        DutyStudy heat = Heat(
            ("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-cooling-time", "300 s"), ("duty.run-time", "20 s"),
            ("duty.starts-per-hour", startsPerHour.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        GivenDuty duty = heat.Duty!;

        double cycle = 3600.0 / startsPerHour, q = Math.Exp(-cycle / 300);
        for (int i = 0; i < 4; i++)
        {
            double afterOne = duty.FromCold[0].EndCelsius[i] - 20, series = 0;
            for (int n = 0; n < 2000; n++) series += afterOne * Math.Pow(q, n);
            Assert.Equal(20 + series, duty.Steady!.StartCelsius[i], 2e-3);
            Assert.Equal(20 + afterOne / (1 - q), duty.Steady.StartCelsius[i], 2e-3);
        }

        Assert.Equal("", duty.Excess);
    }

    // The real long run: the same controller, started and stopped four times in four minutes, with resistances that follow their temperatures.
    [Fact]
    public void Duty_CyclesFromCold_AgreeWithOneLongRunOfTheEngine()
    {
        (string, string?)[] heat =
        [
            ("motor.thermal-capacity", "2 kJ/K"), ("motor.thermal-resistance", "0.15 K/W"), ("starter.section-thermal-capacity", "[\"150 J/K\"]"),
            ("starter.section-cooling-time", "200 s"), ("starter.section-temperature-coefficient", "0.0005"),
        ];
        string[] events = [.. Enumerable.Range(0, 4).SelectMany(i => (string[])[$"at = \"{60 * i} s\"\ncommand = \"start\"", $"at = \"{60 * i + 25} s\"\ncommand = \"stop\""])];
        RunResult run = LineShaftCase.Run(LineShaftCase.With(events, [.. heat, ("run.duration", "240 s"), ("limits.start-time", null)])).Result;

        DutyStudy study = Heat([.. heat, ("duty.run-time", "25 s"), ("duty.rest", "35 s")]);

        Assert.Equal(16, run.Cutouts.Count);
        IReadOnlyList<CycleHeat> cycles = study.Duty!.FromCold;
        for (int i = 0; i < study.Bodies.Count; i++)
        {
            Assert.Equal(run.Temperatures[i].Body, study.Bodies[i].Name);
            Assert.Equal(run.Temperatures[i].HighestCelsius, cycles.Take(4).Max(cycle => cycle.HighestCelsius[i]), 0.05);
            Assert.Equal(run.Temperatures[i].FinalCelsius, cycles[3].EndCelsius[i], 0.05);
        }

        Assert.True(run.Temperatures[1].HighestCelsius > 180);
        Assert.True(run.Temperatures[0].HighestCelsius > 40);
    }

    [Fact]
    public void Duty_SteadyCycle_IsWhereCyclesFromColdEnd()
    {
        DutyStudy study = Heat(
            ("motor.thermal-capacity", "2 kJ/K"), ("motor.thermal-resistance", "0.15 K/W"), ("starter.section-thermal-capacity", "[\"150 J/K\"]"),
            ("starter.section-cooling-time", "100 s"), ("starter.section-temperature-coefficient", "0.0005"), ("duty.run-time", "25 s"), ("duty.rest", "35 s"));

        CycleHeat last = study.Duty!.FromCold[^1];
        for (int i = 0; i < study.Bodies.Count; i++) Assert.Equal(study.Duty.Steady!.HighestCelsius[i], last.HighestCelsius[i], 6.0);
        // A winding that warms up lets less current through: once the sections stand, that takes a little from them.
        Assert.All(study.Duty.FromCold.Zip(study.Duty.FromCold.Skip(1)), pair => Assert.True(pair.Second.HighestCelsius[1] > pair.First.HighestCelsius[1] - 0.2));
    }

    // Found by halving, checked by doing: so many starts an hour never pass the limit, one more does. And more starts never leave it cooler.
    [Fact]
    public void StartsPerHour_AnyResistor_IsTheLimitThatRepetitionFinds() =>
        Gen.Double[0, 1].Array[4].Sample(
            u =>
            {
                int cooling = (int)(60 + 240 * u[0]);
                (string, string?)[] heat =
                [
                    ("starter.section-thermal-capacity", FormattableString.Invariant($"[\"{(int)(200 + 200 * u[1])} J/K\"]")),
                    ("starter.section-cooling-time", $"{cooling} s"),
                    ("starter.section-temperature-coefficient", FormattableString.Invariant($"{0.0005 * u[2]:F6}")),
                    ("starter.section-hot-spot-limit", $"{(int)(140 + 160 * u[3])} degC"), ("control.period", "5 ms"), ("duty.run-time", "8 s"),
                ];
                DutyStudy study = Heat(heat);
                // One start every 8 s is all that an hour has.
                Assert.InRange(study.StartsPerHour, 1, 450);
                if (study.StartsPerHour == 450) return;
                double Reached(int starts) => Repeated(heat, starts, cooling);
                double at = Reached(study.StartsPerHour), next = Reached(study.StartsPerHour + 1), limit = study.Bodies[0].LimitCelsius!.Value;

                Assert.InRange(at, 20, limit + 0.05);
                Assert.True(next > limit - 0.05, $"{study.StartsPerHour} starts: {at}, one more: {next}, limit {limit}");
                Assert.True(next >= at - 1e-6);
                Assert.Equal(at, study.AtStartsPerHour!.HighestCelsius.Max(), 0.05);
            },
            iter: 6,
            threads: 1);

    [Theory]
    [InlineData("25 s", "20 min", "40 K/kW", "S2")]
    [InlineData("20 min", "5 min", "600 K/kW", "S3")]
    [InlineData("25 s", "35 s", "600 K/kW", "S4")]
    public void DutyClass_OfTheCycle_IsNamedByItsRestAndItsStart(string run, string rest, string resistance, string name)
    {
        DutyClass duty = Heat(("motor.thermal-capacity", "2 kJ/K"), ("motor.thermal-resistance", resistance), ("duty.run-time", run), ("duty.rest", rest)).Duty!.Class;

        Assert.Equal(name, duty.Name);
        Assert.StartsWith(name, duty.Designation, StringComparison.Ordinal);
    }

    // 25 s of 60 s are 41.7 %; the inertias as the case has them.
    [Fact]
    [Trait("Source", "CHK-41")]
    public void DutyClass_IntermittentWithStarting_CarriesFactorAndInertias()
    {
        (string, string?)[] cycle = [("motor.thermal-capacity", "2 kJ/K"), ("motor.thermal-resistance", "600 K/kW"), ("duty.run-time", "25 s"), ("duty.rest", "35 s")];
        GivenDuty duty = Heat(cycle).Duty!, braked = Heat([.. cycle, ("brake.resistance", "1.6 ohm"), ("brake.release-speed", "60 rpm")]).Duty!;

        Assert.Equal("S4 41.7 % JM = 0.45 kg m2 Jext = 2.2 kg m2", duty.Class.Designation);
        Assert.Equal("S5 41.7 % JM = 0.45 kg m2 Jext = 2.2 kg m2", braked.Class.Designation);
        // The brake's loop takes the motion: J w^2 / 2 times Ra / (Ra + Rb) into the winding, at each stop.
        Assert.True(braked.Steady!.HighestCelsius[0] > duty.Steady!.HighestCelsius[0] + 0.5);
    }

    // A field on its supply all the time is at its own steady temperature whatever the cycle: Rth V^2/R(u) = u, a quadratic.
    [Fact]
    public void Duty_FieldThatIsNeverSwitchedOff_StaysAtItsSteadyTemperature()
    {
        DutyStudy study = Heat(
            ("field.supply-voltage", "220 V"), ("field.resistance", "110 ohm"), ("field.thermal-capacity", "4 kJ/K"), ("field.thermal-resistance", "0.2 K/W"),
            ("duty.run-time", "25 s"), ("duty.rest", "60 s"));

        double perKelvin = 1 / 255.0, full = 0.2 * 220 * 220 / 110;
        double kelvin = (Math.Sqrt(1 + 4 * perKelvin * full) - 1) / (2 * perKelvin);
        Assert.Equal(20 + kelvin, study.Duty!.Steady!.HighestCelsius[0], 0.05);
    }

    [Theory]
    [InlineData("starter.section-hot-spot-limit", "375 degC", "starter.section-hot-spot-limit", "starter.section-thermal-capacity in the file")]
    [InlineData("starter.section-hot-spot-factor", "1.2", "starter.section-hot-spot-factor", "starter.section-hot-spot-limit in the file")]
    [InlineData("motor.winding-temperature-limit", "145 degC", "motor.winding-temperature-limit", "motor.thermal-capacity")]
    [InlineData("duty.run-time", "20 s", "duty.run-time", "a thermal capacity in the file")]
    [InlineData("contactors.rated-current", "[\"95 A\", \"80 A\"]", "contactors.rated-current", "one value, or 5: line, 4 stages")]
    public void Ratings_KeyThatDoesNothingAlone_IsRefusedAndSaysWhatItNeeds(string key, string value, string blamed, string allowed)
    {
        CaseProblem problem = Assert.Single(Refused((key, value)));

        Assert.Equal(blamed, problem.Key);
        Assert.StartsWith(allowed, problem.Allowed, StringComparison.Ordinal);
        Assert.True(problem.Line > 0);
    }

    [Theory]
    [InlineData("duty.rest", "30 s", "duty.run-time", null, "duty.rest")]
    [InlineData("duty.starts-per-hour", "12", "duty.run-time", null, "duty.starts-per-hour")]
    [InlineData("duty.starts-per-hour", "200", "duty.run-time", "18 s", "duty.starts-per-hour")]
    [InlineData("duty.run-time", "2 s", "duty.rest", "30 s", "duty.run-time")]
    [InlineData("starter.section-hot-spot-limit", "50 degC", "run.ambient-temperature", "60 degC", "starter.section-hot-spot-limit")]
    [InlineData("control.maximum-stage-time", "0.5 s", "duty.run-time", "20 s", "duty.run-time")]
    public void Ratings_ImpossibleDuty_IsRefusedByItsKey(string key, string value, string other, string? otherValue, string blamed)
    {
        IReadOnlyList<CaseProblem> problems = Refused((key, value), (other, otherValue), ("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-cooling-time", "300 s"));

        Assert.Equal(blamed, Assert.Single(problems).Key);
    }

    [Theory]
    [InlineData("11", 1)]
    [InlineData("12", 0)]
    public void Duty_MoreStartsThanTheControllerPermits_IsSaid(string permitted, int excesses)
    {
        CaseRatings ratings = CaseRatings.Of(
            CaseDesign.Of(LineShaftCase.With(
                ("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("starter.section-cooling-time", "300 s"), ("duty.run-time", "20 s"), ("duty.starts-per-hour", "12"),
                ("protection.starts-per-hour", permitted))),
            TestContext.Current.CancellationToken)!;

        Assert.Equal(excesses, ratings.Excesses.Count(excess => excess.Contains("protection.starts-per-hour", StringComparison.Ordinal)));
    }

    [Fact]
    public void Ratings_RestBesideStartsPerHour_IsRefused() =>
        Assert.Contains("duty.rest", Assert.Single(Refused(("starter.section-thermal-capacity", "[\"250 J/K\"]"), ("duty.run-time", "20 s"), ("duty.rest", "30 s"), ("duty.starts-per-hour", "10"))).Found, StringComparison.Ordinal);

    [Fact]
    public void Ratings_CaseWithoutAnyOfItsKeys_IsNotThere() => Assert.Null(CaseRatings.Of(CaseDesign.Of(LineShaftCase.With()), TestContext.Current.CancellationToken));

    // Start after start by the engine alone, each from the temperatures that the one before left, until none becomes hotter than the one before.
    private static double Repeated((string, string?)[] heat, int startsPerHour, double coolingSeconds)
    {
        PreparedRun prepared = CaseRunner.Prepare(LineShaftCase.With(heat));
        double[] sections = [20, 20, 20, 20];
        double hottest = 0;
        for (int i = 0; i < 2000; i++)
        {
            RunSetup setup = prepared.Setup with { DurationSeconds = 8, Heat = prepared.Setup.Heat! with { Start = new BodyCelsius(20, 20, sections) } };
            IReadOnlyList<BodyTemperature> courses = StartSimulation.Run(setup, prepared.Settings, cancellation: TestContext.Current.CancellationToken).Temperatures;
            sections = [.. courses.Select(course => 20 + (course.FinalCelsius - 20) * Math.Exp(-(3600.0 / startsPerHour - 8) / coolingSeconds))];
            double reached = courses.Max(course => course.HighestCelsius);
            if (reached < hottest + 1e-4) break;
            hottest = reached;
        }

        return hottest;
    }

    private static DutyStudy Heat(params (string Key, string? Value)[] changes) =>
        CaseRatings.Of(CaseDesign.Of(LineShaftCase.With(changes)), TestContext.Current.CancellationToken)!.Heat!;

    private static IReadOnlyList<CaseProblem> Refused(params (string Key, string? Value)[] changes) =>
        Assert.Throws<CaseException>(() => CaseRatings.Of(CaseDesign.Of(LineShaftCase.With(changes)), TestContext.Current.CancellationToken)).Problems;
}
