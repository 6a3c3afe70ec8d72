using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseStructureTests
{
    private const string EventsOnly = "; allowed: [[event]] with two brackets, once for each event";

    [Theory]
    [InlineData("[motor]\narmature-resistence = \"1 ohm\"", "2: motor.armature-resistence: found an unknown key; allowed: motor.armature-resistance is the nearest known key")]
    [InlineData("voltage = \"220 V\"", "1: voltage: found an unknown key; allowed: supply.voltage is the nearest known key")]
    [InlineData("[run]\nxyzzy = 1", "2: run.xyzzy: found an unknown key; allowed: in [run]: duration, record-period, ambient-temperature")]
    [InlineData("xyzzy = 1", "1: xyzzy: found an unknown key; allowed: title, or a table: [supply], [motor], [motor.construction], [load], [starter], [control], [contactors], [duty], [field], [series-field], [brake], [sensors], [protection], [run], [limits] or [expect]")]
    [InlineData("\"motor.kind\" = \"x\"", "1: \"motor.kind\": found an unknown key; allowed: motor.kind is the nearest known key")]
    [InlineData("[run]\n\"a\\nb\" = 1", "2: run.\"a\\u000Ab\": found an unknown key; allowed: in [run]: duration, record-period, ambient-temperature")]
    [InlineData("[moter]\nkind = 5", "1: found the unknown table [moter]; allowed: [motor]")]
    [InlineData("[[evnt]]\nkind = 5", "1: found the unknown table [evnt]; allowed: [[event]]")]
    [InlineData("[quite.another]", "1: found the unknown table [quite.another]; allowed: [supply], [motor], [motor.construction], [load], [starter], [control], [contactors], [duty], [field], [series-field], [brake], [sensors], [protection], [run], [limits], [expect], [tolerances] or [[event]]")]
    [InlineData("[[motor]]", "1: found [[motor]]; allowed: [motor] with one bracket")]
    [InlineData("motor = 3", "1: motor: found 3, a number without a unit; allowed: a table, [motor]")]
    [InlineData("[event]\nat = \"1 s\"", "1: found [event]" + EventsOnly)]
    [InlineData("event = 3", "1: event: found 3, a number without a unit" + EventsOnly)]
    [InlineData("event.at = \"1 s\"", "1: event.at: found a key of an event outside of any" + EventsOnly)]
    [InlineData("[motor]\nefficiency = 0.5\nefficiency = 0.6", "3: motor.efficiency: found it a second time, after line 2; allowed: once")]
    [InlineData("[motor]\n[run]\n[motor]\nefficiency = 0.6", "3: [motor]: found it a second time, after line 1; allowed: once")]
    [InlineData("motor.efficiency = 0.5\n[motor]", "2: found \"[motor]\", defined in another place before; allowed: each table and each key in one place")]
    public void Parse_WrongStructure_NamesTheLineAndTheNearest(string text, string expected) =>
        Assert.Equal(expected, Sample.Problems(text));

    [Theory]
    [InlineData("voltage = 220 V", "found \"voltage = 220 V\", with a value without quotes; allowed: voltage = \"220 V\"")]
    [InlineData("voltage = “220 V” # c", "found \"voltage = “220 V” # c\", with a value without quotes; allowed: voltage = \"220 V\"")]
    [InlineData("voltage = \"220 V", "found \"voltage = \"220 V\", with a text that does not end; allowed: name = \"value\", with both quotes")]
    [InlineData("voltage =", "found \"voltage =\", without a value; allowed: name = value")]
    [InlineData("voltage", "found \"voltage\", without a value; allowed: name = value")]
    [InlineData("voltage: 220", "found \"voltage: 220\", with a colon; allowed: name = value")]
    [InlineData("voltage = 0,5", "found \"voltage = 0,5\", which is not a number of TOML; allowed: digits and a decimal point, e.g. 3 or 0.87")]
    [InlineData("voltage = 012", "found \"voltage = 012\", which is not a number of TOML; allowed: digits and a decimal point, e.g. 3 or 0.87")]
    [InlineData("voltage = [\"1 V\",", "found \"voltage = [\"1 V\",\", with a bracket that is not closed; allowed: [table], or name = [\"value\", \"value\"]")]
    public void Parse_BrokenLine_IsOneProblemAndTheRestIsStillRead(string line, string expected) =>
        Assert.Equal(
            $"2: {expected}\n4: load.inertia: found \"-1 kg m2\"; allowed: 0 to 1e9 kg m2, e.g. \"1.9 kg m2\"",
            Sample.Problems($"[supply]\n{line}\n[load]\ninertia = \"-1 kg m2\"\n"));

    [Theory]
    [InlineData("[motor")]
    [InlineData("motor]")]
    public void Parse_BrokenHeader_DoesNotBlameTheKeysBelowIt(string header)
    {
        string problems = Sample.Problems($"[supply]\n{header}\nrated-power = \"5 kW\"\n[load]\ninertia = \"1 A\"\n");

        Assert.Equal(["2", "5"], problems.Split('\n').Select(line => line[..1]));
    }

    [Fact]
    public void Parse_SeveralMistakes_AreReportedInOneGo() =>
        Assert.Equal(
            """
            2: supply.voltage: found "5 A", a current; allowed: a voltage in V, mV or kV, above 0, up to 100 kV, e.g. "220 V"
            4: found "rated-power = 15 kW", with a value without quotes; allowed: rated-power = "15 kW"
            5: motor.inertai: found an unknown key; allowed: motor.inertia is the nearest known key
            7: event: found an event in which nothing happens; allowed: at least one of load-torque, supply-voltage, hoist-torque, load-inertia, field-supply-voltage, field, speed-signal, shaft, contact, contact-fault, coil-voltage, permissives, current-gain, missing-pulses, extra-pulses, resistor-temperature, sensor, sensor-fault, ambient-temperature, cooling and command
            """.ReplaceLineEndings("\n"),
            Sample.Problems("""
                [supply]
                voltage = "5 A"
                [motor]
                rated-power = 15 kW
                inertai = "1 kg m2"

                [[event]]
                at = "1 s"
                """));

    [Theory]
    [InlineData("command = \"stop\"", "1: event.at: found nothing; allowed: a time in s, ms, us, min or h, 0 to 3600 s, e.g. \"5 s\"; or when-speed-above, when-speed-below or when-stage instead")]
    [InlineData("at = \"1 s\"\nwhen-stage = 2\ncommand = \"stop\"", "3: event.when-stage: found it beside event.at; allowed: exactly one of at, when-speed-above, when-speed-below or when-stage")]
    [InlineData("when-speed-above = \"1 rpm\"\nwhen-speed-below = \"2 rpm\"\ncommand = \"stop\"", "3: event.when-speed-below: found it beside event.when-speed-above; allowed: exactly one of at, when-speed-above, when-speed-below or when-stage")]
    [InlineData("at = \"1 s\"\nafter = \"1 s\"\ncommand = \"stop\"", "3: event.after: found it without a condition; allowed: when-speed-above, when-speed-below or when-stage beside it")]
    [InlineData("at = \"1 s\"\nover = \"1 s\"\ncommand = \"stop\"", "3: event.over: found it without anything that could take its time; allowed: load-torque, hoist-torque or supply-voltage beside it")]
    [InlineData("when-stage = 18\ncommand = \"stop\"", "2: event.when-stage: found 18; allowed: a whole number, 1 to 17, without unit, e.g. 2")]
    [InlineData("when-speed-above = \"1 s\"\ncommand = \"stop\"", "2: event.when-speed-above: found \"1 s\", a time; allowed: a speed in rpm, r/min, rad/s or deg/s, -100000 rpm to 100000 rpm, e.g. \"600 rpm\"")]
    [InlineData("at = \"1 s\"", "1: event: found an event in which nothing happens; allowed: at least one of load-torque, supply-voltage, hoist-torque, load-inertia, field-supply-voltage, field, speed-signal, shaft, contact, contact-fault, coil-voltage, permissives, current-gain, missing-pulses, extra-pulses, resistor-temperature, sensor, sensor-fault, ambient-temperature, cooling and command")]
    [InlineData("at = \"1 s\"\ncommand = \"stp\"", "3: event.command: found \"stp\"; allowed: \"start\", \"stop\", \"reset\", \"emergency stop\" or \"release emergency stop\"; the nearest is \"stop\"")]
    [InlineData("at = \"11 s\"\ncommand = \"stop\"", "2: event.at: found \"11 s\", after the end of the run; allowed: up to run.duration, 10 s")]
    [InlineData("at = \"-1 s\"\ncommand = \"stop\"", "2: event.at: found \"-1 s\"; allowed: 0 to 3600 s, e.g. \"5 s\"")]
    [InlineData("at = \"1 s\"\nload-torque = \"1 W\"", "3: event.load-torque: found \"1 W\", a power; allowed: a torque in N m, mN m, kN m or lb ft, 0 to 100000 kN m, e.g. \"120 N m\"")]
    [InlineData("at = \"1 s\"\nat = \"2 s\"\ncommand = \"stop\"", "3: event.at: found it a second time, after line 2; allowed: once")]
    [InlineData("at = \"2 s\"\ncommand = \"stop\"\n[[event]]\nat = \"1 s\"\ncommand = \"reset\"", "5: event.at: found \"1 s\" after \"2 s\"; allowed: events in the order of time")]
    public void Parse_WrongEvent_SaysWhatIsAllowed(string keys, string expected) =>
        Assert.Equal(expected, Sample.Problems($"[[event]]\n{keys}\n"));

    [Fact]
    public void Parse_TwoEventsAtTheSameTimeAtTheEndOfTheRun_AreFine() =>
        Assert.Equal(2, Sample.Parse("""
            [run]
            duration = "2 s"
            [[event]]
            at = "2 s"
            command = "stop"
            [[event]]
            at = "2000 ms"
            load-torque = "0 N m"
            """).Events.Count);

    [Fact]
    public void Parse_EventOnAConditionBetweenTimes_LeavesTheirOrderAlone() =>
        Assert.Equal([1.0, double.PositiveInfinity, 2.0], Sample.Parse("""
            [[event]]
            at = "1 s"
            command = "start"
            [[event]]
            when-speed-below = "30 rpm"
            after = "200 ms"
            command = "stop"
            [[event]]
            at = "2 s"
            command = "stop"
            """).Events.Select(happening => happening.AtSeconds));

    [Fact]
    public void Parse_NestedBeyondSense_IsAProblemAndNotACrash() =>
        Assert.Equal(
            "line-shaft.toml: found lists or tables nested too deeply; allowed: a table in a table",
            Sample.Refused("a = " + new string('[', 100000)).Message);

    [Fact]
    public void Parse_ThousandsOfMistakes_StopsAt200() =>
        Assert.Equal(200, Sample.Refused(string.Concat(Enumerable.Range(0, 5000).Select(i => $"k{i} = 1\n"))).Problems.Count);

    [Fact]
    public void All_Keys_AreUniqueDescribedAndHaveAnExampleThatIsAccepted()
    {
        Assert.Equal(CaseKeys.All.Count, CaseKeys.All.Select(key => key.Path).Distinct().Count());
        Assert.Equal(
            typeof(CaseKeys).GetFields().Select(field => field.GetValue(null)).ToHashSet(), CaseKeys.All.ToHashSet<object?>());
        foreach (CaseKey key in CaseKeys.All.Where(key => key.Table != "event"))
        {
            CaseFile read = Sample.Parse($"{key.Path} = {key.Example}\n");
            Assert.True(read.Has(key), key.Path);
            Assert.Matches("^[A-Z].*[^.]$", key.Summary);
        }
    }
}
