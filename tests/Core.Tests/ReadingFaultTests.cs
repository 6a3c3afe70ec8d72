using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Every fault that one tick's readings can show, entered from every phase.</summary>
public sealed class ReadingFaultTests
{
    private static readonly (Phase Phase, int Stage, Func<Bench> Prepare)[] Phases =
    [
        (Phase.Ready, 1, () => new Bench(contactTicks: 3).Tick()),
        (Phase.Accelerating, 1, () => new Bench(contactTicks: 50).Tick().PressStart()),
        (Phase.Accelerating, 1, () => new Bench(contactTicks: 3).Started().BackEmf(130f)),
        (Phase.Accelerating, 2, () => new Bench(contactTicks: 3).InStage(2).BackEmf(190f)),
        (Phase.Accelerating, 3, () => new Bench(contactTicks: 3).InStage(3).BackEmf(220f)),
        (Phase.Running, 4, () => new Bench(contactTicks: 3).Run()),
        (Phase.Stopping, 1, () => new Bench(contactTicks: 50).Run().PressStop()),
    ];

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(500.01f)]
    [InlineData(-50.01f)]
    [InlineData(float.MaxValue)]
    public void Supply_NotBelievable_TripsFromEveryPhase(float volts) =>
        AssertTripsFromEveryPhase(readings => readings.SupplyVolts = volts, FaultId.ReadingInvalid, volts, volts < 0f ? -50f : 500f, Channel.Supply);

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(1000001f)]
    [InlineData(-1000001f)]
    public void Current_NotBelievable_TripsFromEveryPhase(float amps) =>
        AssertTripsFromEveryPhase(readings => readings.ArmatureAmps = amps, FaultId.ReadingInvalid, amps, amps < 0f ? -Settings.Largest : Settings.Largest, Channel.ArmatureCurrent);

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(200.01f)]
    [InlineData(-200.01f)]
    public void Speed_NotBelievable_TripsFromEveryPhase(float speed) =>
        AssertTripsFromEveryPhase(readings => readings.SpeedRadPerSec = speed, FaultId.ReadingInvalid, speed, speed < 0f ? -200f : 200f, Channel.Speed);

    [Fact]
    public void Speed_NotFresh_TripsFromEveryPhaseWhateverItsValue() =>
        AssertTripsFromEveryPhase(
            readings =>
            {
                readings.SpeedValid = false;
                readings.SpeedRadPerSec = 60f;
            },
            FaultId.SpeedSignalLost,
            0f,
            0f);

    [Fact]
    public void Board_CouldNotRead_TripsFromEveryPhaseHoweverSoundTheOldReadingsAre() =>
        AssertTripsFromEveryPhase(readings => readings.Stale = true, FaultId.ReadingInvalid, 1f, 0f, Channel.All);

    [Theory]
    [InlineData(1000.1f)]
    [InlineData(-1000.1f)]
    [InlineData(1000000f)]
    public void Current_AboveTheTripOfEitherSign_TripsFromEveryPhase(float amps) =>
        AssertTripsFromEveryPhase(readings => readings.ArmatureAmps = amps, FaultId.Overcurrent, amps, 1000f);

    [Fact]
    public void EmergencyStop_Open_TripsFromEveryPhase() =>
        AssertTripsFromEveryPhase(readings => readings.EmergencyStop = true, FaultId.EmergencyStop, 1f, 0f);

    [Theory]
    [InlineData(500f, 1000f, 200f)]
    [InlineData(-50f, -1000f, -200f)]
    [InlineData(0f, 0f, 0f)]
    public void Readings_AtTheirLimits_AreBelieved(float volts, float amps, float speed)
    {
        Bench bench = new Bench().Tick();
        bench.Readings.SupplyVolts = volts;
        bench.Readings.ArmatureAmps = amps;
        bench.Readings.SpeedRadPerSec = speed;

        bench.Ticks(10);

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Readings_EverythingWrongAtOnce_TheMostImportantIsLatched()
    {
        Bench bench = new Bench().Run();
        bench.Readings.SupplyVolts = float.NaN;
        bench.Readings.ArmatureAmps = 2000f;
        bench.Readings.SpeedValid = false;

        bench.PressEmergencyStop();

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
    }

    [Fact]
    public void Readings_BadOneWithOvercurrent_IsLatchedBeforeIt()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = 2000f;
        bench.Readings.SpeedRadPerSec = float.NaN;

        bench.Tick();

        bench.AssertTripped(FaultId.ReadingInvalid, float.NaN, 200f);
    }

    private static void AssertTripsFromEveryPhase(Action<Readings> spoil, FaultId fault, float measured, float limit, Channel channel = Channel.None)
    {
        foreach ((Phase phase, int stage, Func<Bench> prepare) in Phases)
        {
            Bench bench = prepare();
            Assert.Equal((phase, stage), (bench.Controller.Phase, bench.Controller.Stage));

            spoil(bench.Readings);
            bench.Tick();

            bench.AssertTripped(fault, measured, limit);
            Assert.Equal((phase, stage, channel), (bench.Controller.Fault.InPhase, bench.Controller.Fault.InStage, bench.Controller.Fault.Channel));
            bench.AssertWhy(Reason.FaultLatched, (int)fault, 0f);
            Assert.Equal(1, bench.Controller.Stage);
        }
    }
}
