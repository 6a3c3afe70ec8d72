using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>A whole start through counts, edges and pins, against the simulator's start of the same case with ideal sensors.</summary>
public sealed class BoardStartTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(int.MaxValue - 4_000_000)]
    public void Start_ThroughPins_CutsOutTheSameStagesAtTheSameSpeedsAsTheSimulator(int counterStart)
    {
        BoardBench bench = new(counterStart: counterStart);
        Assert.Equal(BoardProblem.None, bench.Wiring.Problem);

        bench.Start();
        double pressed = bench.Seconds;
        bench.Until(() => bench.Loop.Controller.Phase == Phase.Running, 5);

        RunResult run = CaseRunner.Run(bench.Case, null, TestContext.Current.CancellationToken).Result;
        Assert.Equal(Phase.Running, bench.Loop.Controller.Phase);
        Assert.Equal(run.Cutouts.Select(cutout => cutout.Stage), bench.Cutouts.Select(cutout => cutout.Stage));
        Assert.InRange(run.Cutouts.Count, 2, 6);
        foreach ((Cutout expected, (int _, double seconds, double radPerSec)) in run.Cutouts.Zip(bench.Cutouts))
        {
            // Start's and contacts' debouncing, 20 and 5 ms each, and the speed's delay of 3.5 to 6 ms come on top.
            Assert.InRange(seconds - pressed - expected.Seconds, 0.02, 0.06);
            Assert.Equal(expected.Rpm * Math.PI / 30, radPerSec, 1.0);
        }

        Assert.Equal((0, FaultId.None), (bench.Guard.Timing.LateCount, bench.Loop.Controller.Fault.Id));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4095)]
    [InlineData(-1)]
    public void CurrentSensor_OpenOrShorted_TripsWithinThreePeriods(int counts)
    {
        BoardBench bench = Accelerating();

        bench.StuckCurrentCounts = counts;
        double broken = bench.Seconds;
        bench.Until(() => !bench.Pins.IsOn(PinRole.LineCoil), 1);

        Assert.InRange(bench.Seconds - broken, 0.0005, 0.0035);
        Assert.Equal((FaultId.ReadingInvalid, Channel.ArmatureCurrent), (bench.Loop.Controller.Fault.Id, bench.Loop.Controller.Fault.Channel));
    }

    [Fact]
    public void PickUp_GivesNoMoreEdges_TripsBeforeAnotherStageIsCutOut()
    {
        BoardBench bench = Accelerating();
        int cutouts = bench.Cutouts.Count;

        bench.HasEdges = false;
        double broken = bench.Seconds;
        bench.Until(() => !bench.Pins.IsOn(PinRole.LineCoil), 2);

        Assert.Equal(FaultId.SpeedSignalLost, bench.Loop.Controller.Fault.Id);
        Assert.InRange(bench.Seconds - broken, 0.002, 0.1);
        Assert.Equal(cutouts, bench.Cutouts.Count);
    }

    [Fact]
    public void StopChain_Opens_DropsEverythingOnTheSamePeriod()
    {
        BoardBench bench = Accelerating();

        bench.Pins.Close(PinRole.StopChain, false);
        double opened = bench.Seconds;
        bench.Until(() => !bench.Pins.IsOn(PinRole.LineCoil), 1);

        Assert.Equal(0.001, bench.Seconds - opened, 6);
        Assert.Equal(FaultId.EmergencyStop, bench.Loop.Controller.Fault.Id);
    }

    [Fact]
    public void StartButton_BouncesAndIsHeldFromPowerUp_StartsNothing()
    {
        BoardBench bench = new();
        bench.Pins.Close(PinRole.StartButton);

        bench.Until(() => bench.Pins.IsOn(PinRole.LineCoil), 4);

        Assert.True(bench.Guard.PowerUp.IsOpen);
        Assert.False(bench.Pins.IsOn(PinRole.LineCoil));
        Assert.Equal(Phase.Ready, bench.Loop.Controller.Phase);
    }

    // On the first stage at half the speed of its cutout.
    private static BoardBench Accelerating()
    {
        BoardBench bench = new();
        bench.Start().Until(() => bench.RadPerSec > 30, 3);
        Assert.Equal(Phase.Accelerating, bench.Loop.Controller.Phase);
        return bench;
    }
}
