using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Wires of analogue sensors that break: what the controller is given, and what it makes of it.</summary>
public sealed class SensorFaultTests
{
    private static readonly string[] Names = ["supply volts", "armature current", "field current", "resistor temperature"];

    [Fact]
    public void Run_StuckThenOpenThenSound_GivesTheLastReadingThenNothingThenWhatIsThere()
    {
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(
            Broken(0.5, SensorName.ArmatureAmps, SensorFaultKind.Stuck),
            Broken(2, SensorName.ArmatureAmps, SensorFaultKind.OpenWire),
            Broken(3, SensorName.ArmatureAmps, SensorFaultKind.Sound)));

        float before = run.At(0.499).ArmatureAmps;
        Assert.True(before > 80);
        Assert.All(run.Between(0.5, 1.998), sample => Assert.Equal(before, sample.ArmatureAmps));
        Assert.All(run.Between(2, 2.998), sample => Assert.Equal(0f, sample.ArmatureAmps));
        // The load takes 70 N m over 1.69 V s/rad.
        Assert.Equal(70 / 1.69, run.At(3.9).ArmatureAmps, 0.5);
    }

    [Theory]
    [InlineData(SensorName.SupplyVolts, -400)]
    [InlineData(SensorName.ArmatureAmps, -300)]
    public void Run_OpenWireOfASensorWithARange_ReadsMinusTheRange(SensorName sensor, float lowest)
    {
        SensorModel model = new() { Voltage = new SensorChannel { Range = 400 }, Current = new SensorChannel { Range = 300 } };

        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(Broken(3, sensor, SensorFaultKind.OpenWire)) with { Sensors = model });

        Sample at = run.At(3.001);
        Assert.Equal(lowest, sensor == SensorName.SupplyVolts ? at.SupplyVolts : at.ArmatureAmps);
    }

    [Fact]
    public void Run_SupplySensorStuckBeforeTheSupplyFalls_GoesOnReadingWhatItWas()
    {
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(
            Broken(3, SensorName.SupplyVolts, SensorFaultKind.Stuck),
            new RunEvent(3.2, null, 180, null)));

        float before = run.At(2.999).SupplyVolts;
        Assert.InRange(before, 210, 220);
        Assert.All(run.Between(3.3, 3.9), sample => Assert.Equal(before, sample.SupplyVolts));
    }

    [Fact]
    public void Run_ResistorSensorStuckOpenAndMended_ReadsTheLastThenNothingThenWhatIsThere()
    {
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(
            new RunEvent(1, null, null, null) { ResistorCelsius = 80 },
            Broken(2, SensorName.ResistorCelsius, SensorFaultKind.Stuck),
            new RunEvent(2.2, null, null, null) { ResistorCelsius = 150 },
            Broken(3, SensorName.ResistorCelsius, SensorFaultKind.OpenWire),
            Broken(3.5, SensorName.ResistorCelsius, SensorFaultKind.Sound)));

        Assert.All(run.Between(1.1, 2.998), sample => Assert.Equal(80f, sample.ResistorCelsius));
        Assert.All(run.Between(3.001, 3.498), sample => Assert.Equal(0f, sample.ResistorCelsius));
        Assert.Equal(150f, run.At(3.6).ResistorCelsius);
    }

    // Each reaction is the core's own, of hardware-notes/03-faults.md; only what it is given comes from the wire.
    [Theory]
    [InlineData("supply volts", "open wire", "protection.supply-low", "200 V", FaultId.SupplyLow)]
    [InlineData("resistor temperature", "stuck", "protection.resistor-temperature", "300 degC", FaultId.None)]
    [InlineData("resistor temperature", "open wire", "protection.resistor-temperature", "300 degC", FaultId.None)]
    [InlineData("armature current", "open wire", "protection.disagreement", "3 V", FaultId.BackEmfDisagreement)]
    public void Case_BrokenWireWhileRunning_IsFoundWhereAnythingContradictsIt(string sensor, string state, string key, string value, FaultId expected)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With([Event(4, sensor, state)], (key, value)));

        FaultEntry? first = study.Result.Faults.SingleOrDefault();
        Assert.Equal(expected, first?.Id ?? FaultId.None);
        Assert.Contains(study.Result.Timeline, entry => entry.Event?.SensorFault != null);
        // No more than 1 s: the longest of the confirm times above.
        if (first != null) Assert.InRange(first.Seconds, 4 - 1e-9, 5);
        Assert.Equal(expected == FaultId.None ? Phase.Running : Phase.Tripped, study.Result.Phases[^1].Phase);
    }

    // The field is on at 220 V / 110 ohm = 2 A; below 1 A counts as lost.
    [Theory]
    [InlineData("open wire", FaultId.FieldLost)]
    [InlineData("stuck", FaultId.None)]
    public void Case_FieldCurrentSensorBreaks_TripsWhenItReadsNothingAndNotWhenItStands(string state, FaultId expected)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Event(4, "field current", state)],
            ("field.supply-voltage", "220 V"), ("field.resistance", "110 ohm"), ("field.minimum-current", "1 A")));

        Assert.Equal(expected, study.Result.Faults.SingleOrDefault()?.Id ?? FaultId.None);
        Assert.Equal(2f, study.Record.Samples.First(sample => sample.TimeSeconds > 3).FieldAmps, 1e-3f);
    }

    // A stuck field sensor hides a lost field from its own supervision: the current that follows has to do it.
    [Fact]
    public void Case_FieldIsLostBehindAStuckSensor_TripsByTheCurrent()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            [Event(4, "field current", "stuck"), "at = \"4.5 s\"\nfield = \"open\""],
            ("field.supply-voltage", "220 V"), ("field.resistance", "110 ohm"), ("field.inductance", "30 H"), ("field.minimum-current", "1 A"), ("load.fan-torque", null)));

        FaultEntry first = study.Result.Faults[0];
        Assert.Equal(FaultId.Overcurrent, first.Id);
        Assert.InRange(first.Seconds, 4.5, 5.5);
        Assert.Equal(Phase.Tripped, study.Result.Phases[^1].Phase);
    }

    [Theory]
    [InlineData("field current", "sensors.field-current = \"yes\" in the file")]
    [InlineData("resistor temperature", "protection.resistor-temperature in the file")]
    public void Case_SensorThatIsNotThere_IsRefused(string sensor, string allowed)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With([Event(4, sensor, "stuck")])));

        Assert.Equal(("event.sensor", allowed), (problem.Key, problem.Allowed));
    }

    [Theory]
    [InlineData("sensor = \"armature current\"", "event.sensor-fault")]
    [InlineData("sensor-fault = \"stuck\"", "event.sensor")]
    public void Case_HalfOfAPair_NamesTheOther(string half, string missing)
    {
        CaseException error = Assert.Throws<CaseException>(() => LineShaftCase.With(["at = \"4 s\"\n" + half]));

        Assert.Equal(missing, Assert.Single(error.Problems).Key);
    }

    [Fact]
    public void Sentence_EveryFault_IsOneOfItsOwn()
    {
        string[] sentences =
        [
            .. from sensor in System.Enum.GetValues<SensorName>()
               from kind in System.Enum.GetValues<SensorFaultKind>()
               select EventText.Sentence(Broken(1, sensor, kind)),
        ];

        Assert.Equal(Names, CaseKeys.EventSensor.Choices);
        Assert.Equal(12, sentences.Distinct().Count());
        Assert.Equal("event: the wire of the sensor of the supply voltage opens", EventText.Sentence(Broken(1, SensorName.SupplyVolts, SensorFaultKind.OpenWire)));
    }

    private static string Event(double seconds, string sensor, string state) => $"at = \"{seconds} s\"\nsensor = \"{sensor}\"\nsensor-fault = \"{state}\"";

    private static RunEvent Broken(double seconds, SensorName sensor, SensorFaultKind kind) => new(seconds, null, null, null) { SensorFault = new SensorFault(sensor, kind) };
}
