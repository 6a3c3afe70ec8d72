using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Windings and sections that warm up over a run. Sources: tests/published/SOURCES.md, CHK-37 and CHK-24.</summary>
[Trait("Source", "CHK-37")]
public sealed class TemperatureTests
{
    private const double StageSeconds = 10;

    // 100 V on a jammed shaft through 1 ohm of armature and a section of 4 ohm: 20 A, 1600 W in the section, until the stage has taken too long.
    private static readonly Rig Jammed = new()
    {
        Machine = new Machine(1, 1, 0, 0, 0.1),
        Supply = new Supply(100, 0),
        Load = new Load(1e4, 0, 0),
        SectionOhms = [4],
        PeakAmps = 20,
        Control = new ControlSetup { PeriodMicroseconds = 1000, InstantTripAmps = 1e6, MaximumStageMicroseconds = (int)(StageSeconds * 1e6) },
        DurationSeconds = 30,
    };

    [Fact]
    public void Run_SectionsWithoutCooling_RiseByTheirHeatOverTheirCapacity()
    {
        Rig rig = Rigs.LineShaft with { Control = Rigs.Panel };
        double[] capacities = [900, 500, 300];

        RunResult cold = rig.Run(), warm = (rig with { Heat = new ThermalSetup { Sections = [.. capacities.Select(c => new ThermalMass(c, double.PositiveInfinity))], AmbientCelsius = 35 } }).Run();

        Assert.Equal(["section 1", "section 2", "section 3"], warm.Temperatures.Select(body => body.Body));
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(35, warm.Temperatures[i].StartCelsius);
            Assert.True(warm.SectionJoules[i] > 1000);
            Assert.Equal(35 + warm.SectionJoules[i] / capacities[i], warm.Temperatures[i].FinalCelsius, 1e-9);
            // Without a coefficient nothing acts back.
            Assert.Equal(1, warm.SectionJoules[i] / cold.SectionJoules[i], 1e-9);
        }

        Assert.Equal(cold.PeakAmps, warm.PeakAmps, 1e-6);
        Assert.Empty(cold.Temperatures);
    }

    // 1600 W through 0.05 K/W would end 80 K up; 5 s are the time constant. The trip opens the line, then it cools.
    [Theory]
    [InlineData(20)]
    [InlineData(1000)]
    [InlineData(100_000)]
    public void Run_SectionAtConstantPower_RisesAndCoolsByItsTimeConstant(int periodMicroseconds)
    {
        Record record = new(periodMicroseconds * 10);
        Rig rig = Jammed with
        {
            Control = Jammed.Control with { PeriodMicroseconds = periodMicroseconds },
            DurationSeconds = periodMicroseconds == 20 ? 2 : 30,
            Heat = new ThermalSetup { Sections = [new ThermalMass(100, 5)], AmbientCelsius = 20 },
        };

        RunResult run = rig.Run(record);

        double opened = run.Faults.Count > 0 ? run.Faults[0].Seconds : double.PositiveInfinity;
        double highest = 20 + 80 * (1 - Math.Exp(-Math.Min(opened, 2) / 5));
        Assert.Equal(periodMicroseconds == 20 ? [] : [FaultId.StageTookTooLong], run.Faults.Select(fault => fault.Id));
        foreach (Sample sample in record.Samples.Where(sample => sample.TimeSeconds >= 0))
        {
            double heated = Math.Min(sample.TimeSeconds, opened), cooled = sample.TimeSeconds - heated;
            double expected = 20 + 80 * (1 - Math.Exp(-heated / 5)) * Math.Exp(-cooled / 5);
            // Up to 20 ms old.
            Assert.InRange(sample.HottestSectionCelsius, expected - 0.33, expected + 0.33);
        }

        double end = rig.DurationSeconds, until = Math.Min(opened, end);
        Assert.Equal(20 + 80 * (1 - Math.Exp(-until / 5)) * Math.Exp(-(end - until) / 5), run.Temperatures[0].FinalCelsius, 1e-6);
        Assert.Equal(20 + 80 * (1 - Math.Exp(-until / 5)), run.Temperatures[0].HighestCelsius, 1e-6);
        Assert.True(highest > 20);
    }

    // A constant load torque takes a constant current whatever the resistance. With u = T - T0 the winding then follows
    // du/dt = a (1 + u / (235 + T0)) - b u, a = I^2 R0 / C, b = 1 / tau, which is linear again: it goes to a / m by e^(-m t), with
    // m = b - a / (235 + T0). Derived here.
    [Theory]
    [Trait("Source", "CHK-24")]
    [InlineData(20, 200)]
    [InlineData(90, 200)]
    [InlineData(20, double.PositiveInfinity)]
    public void Run_WindingAtConstantCurrent_FollowsItsClosedForm(double beginCelsius, double coolingSeconds)
    {
        const double Ohms = 0.5, JoulesPerKelvin = 2000;
        Rig rig = new()
        {
            Machine = new Machine(1, Ohms, 0, 0, 1e-4),
            Supply = new Supply(200, 0),
            Load = new Load(40, 0, 0),
            PeakAmps = 100,
            StageCount = 2,
            Control = Rigs.Panel,
            DurationSeconds = 60,
            Heat = new ThermalSetup { Armature = new ThermalMass(JoulesPerKelvin, coolingSeconds), AmbientCelsius = beginCelsius, WindingCelsius = beginCelsius },
        };

        // The start is over long before 5 s.
        double first = Assert.Single((rig with { DurationSeconds = 5 }).Run().Temperatures).FinalCelsius;
        RunResult run = rig.Run();

        double a = 40 * 40 * Ohms / JoulesPerKelvin, m = 1 / coolingSeconds - a / (235 + beginCelsius);
        Assert.Equal(beginCelsius + a / m + (first - beginCelsius - a / m) * Math.Exp(-m * 55), run.Temperatures[0].FinalCelsius, 1e-5);

        // And the speed falls with it: k w = V - I R(T).
        double warmOhms = Ohms * (235 + run.Temperatures[0].FinalCelsius) / (235 + beginCelsius);
        Assert.Equal(200 - 40 * warmOhms, run.FinalRpm * Math.PI / 30, 1e-3);
        Assert.True(run.Temperatures[0].FinalCelsius > beginCelsius + 15);
    }

    // I = V / (Ra + R (1 + c u)): the current at the end is that of the temperature at the end.
    [Fact]
    public void Run_SectionWithACoefficient_LetsLessCurrentThrough()
    {
        Rig rig = Jammed with
        {
            DurationSeconds = 9,
            Heat = new ThermalSetup { Sections = [new ThermalMass(50, double.PositiveInfinity)], SectionPerKelvin = 0.001 },
        };

        RunResult run = rig.Run();

        double kelvin = run.Temperatures[0].FinalCelsius - 20;
        Assert.InRange(kelvin, 150, 300);
        Assert.Equal(100 / (1 + 4 * (1 + 0.001 * kelvin)), run.FinalAmps, 2e-3);
        Assert.Equal(20, run.PeakAmps, 2e-3);
        Assert.Equal(50 * kelvin, run.SectionJoules[0], 1e-6);
        // C du/dt = V^2 R (1 + c u) / (Ra + R (1 + c u))^2, integrated: with s = 5 + 4 c u and R (1 + c u) = s - 1 the time is
        // C / (4 c V^2) times the integral of s^2 / (s - 1) ds from 5 on, which is (s - 1)^2 / 2 + 2 (s - 1) + ln(s - 1).
        double Primitive(double s) => (s - 1) * (s - 1) / 2 + 2 * (s - 1) + Math.Log(s - 1);
        double seconds = 50 / (4 * 0.001 * 1e4) * (Primitive(5 + 4 * 0.001 * kelvin) - Primitive(5));
        Assert.Equal(9, seconds, 1e-4);
    }

    [Fact]
    public void Run_CoolingBlockedAndSoundAgain_KeepsTheHeatMeanwhile()
    {
        Record record = new(100_000);
        Rig rig = Jammed with
        {
            Events =
            [
                new RunEvent(12, null, null, null) { CoolingBlocked = true },
                new RunEvent(17, null, null, null) { CoolingBlocked = false },
                new RunEvent(20, null, null, null) { AmbientCelsius = 50 },
            ],
            Heat = new ThermalSetup { Sections = [new ThermalMass(100, 5)] },
        };

        RunResult run = rig.Run(record);

        double At(double seconds) => record.Samples.MinBy(sample => Math.Abs(sample.TimeSeconds - seconds)).HottestSectionCelsius;
        double opened = run.Faults[0].Seconds, at12 = 20 + 80 * (1 - Math.Exp(-opened / 5)) * Math.Exp(-(12 - opened) / 5);
        Assert.Equal(at12, At(12), 1e-3);
        Assert.Equal(at12, At(17), 1e-3);
        double at20 = 20 + (at12 - 20) * Math.Exp(-3.0 / 5);
        Assert.Equal(at20, At(20), 1e-3);
        Assert.Equal(50 + (at20 - 50) * Math.Exp(-2), run.Temperatures[0].FinalCelsius, 1e-3);
    }

    [Fact]
    public void Show_ResistorSensor_FollowsTheHottestSectionUntilAnEventSaysOtherwise()
    {
        Rig rig = Jammed with
        {
            Control = Jammed.Control with { Protections = new ProtectionSetup { ResistorCelsius = 80 } },
            Heat = new ThermalSetup { Sections = [new ThermalMass(100, 5)] },
        };

        FaultEntry trip = Assert.Single(rig.Run().Faults);
        FaultEntry overridden = Assert.Single((rig with { Events = [new RunEvent(1, null, null, null) { ResistorCelsius = 25 }] }).Run().Faults);

        // 20 + 80 (1 - e^(-t / 5 s)) passes 80 after 5 s ln 4; a reading is up to 20 ms old.
        Assert.Equal(FaultId.ResistorTooHot, trip.Id);
        Assert.InRange(trip.Seconds, 5 * Math.Log(4), 5 * Math.Log(4) + 0.022);
        Assert.Equal(80, trip.Value, 0.1);
        Assert.Equal(FaultId.StageTookTooLong, overridden.Id);
    }

    // At constant voltage a field winding of copper ends where Rth V^2 / R(u) = u, R(u) = R0 (1 + u / (235 + T0)): a quadratic. Derived here.
    [Theory]
    [Trait("Source", "CHK-24")]
    [InlineData("separately excited", "0 H")]
    [InlineData("separately excited", "5 H")]
    [InlineData("shunt", "5 H")]
    public void Run_FieldWinding_EndsWhereItsLossAndItsCoolingMeet(string kind, string henries)
    {
        bool isShunt = kind == "shunt";
        RunResult run = LineShaftCase.Run(LineShaftCase.With(
            ("motor.kind", kind), ("field.supply-voltage", isShunt ? null : "220 V"), ("field.resistance", "110 ohm"), ("field.inductance", henries),
            ("field.thermal-capacity", "20 J/K"), ("field.thermal-resistance", "0.2 K/W"), ("run.ambient-temperature", "20 degC"),
            ("supply.resistance", "0 ohm"), ("run.duration", "50 s"))).Result;

        double perKelvin = 1 / 255.0, full = 0.2 * 220 * 220 / 110;
        double kelvin = (Math.Sqrt(1 + 4 * perKelvin * full) - 1) / (2 * perKelvin);
        BodyTemperature winding = Assert.Single(run.Temperatures);
        Assert.Equal("field winding", winding.Body);
        Assert.Equal(20 + kelvin, winding.FinalCelsius, 0.02);
        Assert.InRange(kelvin, 60, 80);
    }

    [Theory]
    [InlineData("motor.thermal-resistance", "0.1 K/W", "motor.thermal-capacity")]
    [InlineData("field.thermal-capacity", "9 kJ/K", "field.")]
    [InlineData("starter.section-cooling-time", "600 s", "starter.section-thermal-capacity")]
    [InlineData("starter.section-temperature-coefficient", "0.0001", "starter.section-thermal-capacity")]
    [InlineData("starter.section-thermal-capacity", "[\"1 kJ/K\", \"2 kJ/K\"]", "one value, or 4")]
    [InlineData("run.ambient-temperature", "40 degC", "a thermal capacity")]
    public void Run_KeyThatDoesNothingAlone_IsRefusedAndSaysWhatItNeeds(string key, string value, string needed)
    {
        CaseProblem[] problems = [.. LineShaftCase.Refused(LineShaftCase.With((key, value)))];

        Assert.Contains(problems, problem => problem.ToString().Contains(needed, StringComparison.Ordinal) || problem.Key.StartsWith(needed, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("ambient-temperature = \"40 degC\"", "event.ambient-temperature")]
    [InlineData("cooling = \"blocked\"", "event.cooling")]
    public void Run_EventOnNothingThatWarmsUp_IsRefused(string action, string key)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(["at = \"1 s\"\n" + action])));

        Assert.Equal(key, problem.Key);
        Assert.Contains("thermal capacity", problem.Allowed, StringComparison.Ordinal);
    }

    // Each start adds to what the rest before has left: at least e^(-60 / 300) of it.
    [Fact]
    public void HotRestarts_ThirdStartWithinTwoMinutes_TripsOnTheHottestSection()
    {
        StartStudy study = ShippedCase.Run("hot-restarts");

        FaultEntry fault = Assert.Single(study.Result.Faults);
        Assert.Equal((FaultId.ResistorTooHot, 350f), (fault.Id, fault.Limit));
        Assert.InRange(fault.Value, 350, 351);
        Assert.InRange(fault.Seconds, 121, 127);
        double HighestBetween(double from, double to) => study.Record.Samples.Where(s => s.TimeSeconds >= from && s.TimeSeconds < to).Max(s => s.HottestSectionCelsius);
        double first = HighestBetween(0, 60) - 30, second = HighestBetween(60, 120) - 30;
        Assert.InRange(second / first, 1 + Math.Exp(-60.0 / 300), 2);
        Assert.Equal(2, study.Result.Phases.Count(entry => entry.Phase == Phase.Running));
        Assert.Equal([1, 2, 3, 4, 1, 2, 3, 4], study.Result.Cutouts.Select(cutout => cutout.Stage));
    }
}
