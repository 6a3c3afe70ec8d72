using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Desk.Tests;

/// <summary>What goes wrong in a case goes wrong at the board's pins, and trips the whole firmware as it trips the simulator's controller.</summary>
public sealed class DeskFaultTests
{
    private const string WithPulses = "\n[sensors]\npulses-per-revolution = 60\nzero-current = \"2 A\"\nspeed-loss-time = \"200 ms\"\n";

    [Theory]
    [InlineData("line-shaft.toml", "\n[[event]]\nat = \"0.5 s\"\ncommand = \"emergency stop\"\n", FaultId.EmergencyStop, 0.5)]
    [InlineData("line-shaft.toml", WithPulses + "\n[[event]]\nat = \"0.7 s\"\nmissing-pulses = 1\n", FaultId.SpeedSignalLost, 0.7)]
    [InlineData("speed-lost-starting.toml", null, FaultId.SpeedSignalLost, 1.0)]
    [InlineData("welded-stage.toml", null, FaultId.ContactDidNotOpen, 7.0)]
    [InlineData("current-sensor.toml", null, FaultId.SectionDrifted, 0.0)]
    [InlineData("line-shaft.toml", "\n[protection]\ndisagreement = \"8 V\"\n\n[[event]]\nat = \"0.5 s\"\nsensor = \"armature current\"\nsensor-fault = \"stuck\"\n", FaultId.BackEmfDisagreement, 0.5)]
    public void Fault_OfTheCase_TripsWithTheSimulatorsId(string caseName, string? instead, FaultId expected, double atSeconds)
    {
        using DeskBench bench = new(caseName, instead);
        bench.Start().Until(() => bench.Controller.Phase == Phase.Tripped, 10);
        RunResult run = CaseRunner.Run(bench.Case, null, TestContext.Current.CancellationToken).Result;

        Assert.Equal((expected, expected), (run.Faults[0].Id, bench.Controller.Fault.Id));
        Assert.InRange(bench.Board.Plant.Seconds - bench.Board.Plant.BeganSeconds, atSeconds, run.Faults[0].Seconds + 0.05);
        Assert.False(bench.Board.IsAnyCoilOn);
    }

    /// <summary>The simulator reads 0 A from an open wire, which no converter with a live zero gives: the board knows more.</summary>
    [Fact]
    public void CurrentSensor_WithAnOpenWire_TripsWithinThreePeriodsAndIsNamed()
    {
        using DeskBench bench = new("line-shaft.toml", "\n[[event]]\nat = \"0.5 s\"\nsensor = \"armature current\"\nsensor-fault = \"open wire\"\n");
        bench.Start().Until(() => bench.Controller.Phase == Phase.Tripped, 10);

        Assert.Equal((FaultId.ReadingInvalid, Channel.ArmatureCurrent), (bench.Controller.Fault.Id, bench.Controller.Fault.Channel));
        // The median of three samples passes the second one of zero counts.
        Assert.InRange(bench.Board.Plant.Seconds - bench.Board.Plant.BeganSeconds, 0.5005, 0.5035);
    }

    [Fact]
    public void Wiring_WithAPickUpAndNoZeroCurrent_CountsOnePerCentOfTheRangeAsNone()
    {
        using DeskBench bench = new("line-shaft.toml", "\n[sensors]\npulses-per-revolution = 60\n");
        Assert.Equal(0f, bench.Run.Settings.ZeroAmps);

        bench.Until(() => bench.Board.Starter.PowerUp.IsOpen, 3);

        Assert.Equal(PowerUpProblem.None, bench.Board.Starter.PowerUp.Problem);
        // Twice the trip of 232.5 A is the range.
        Assert.Equal(4.65f, DeskWiring.Of(bench.Run).Standstill.ZeroAmps, 1e-4f);
    }

    /// <summary>A generator whose coupling slips in the middle of a start shows 0 rad/s: unknown after a second of current, never a standing shaft.</summary>
    [Fact]
    public void Tacho_ThatShowsZeroWhileCurrentFlows_IsLostAfterItsTimeOut()
    {
        using DeskBench bench = new("line-shaft.toml", "\n[[event]]\nat = \"0.5 s\"\nspeed-signal = \"zero\"\n");
        bench.Start().Until(() => bench.Controller.Phase == Phase.Tripped, 10);

        Assert.Equal(FaultId.SpeedSignalLost, bench.Controller.Fault.Id);
        Assert.InRange(bench.Board.Plant.Seconds - bench.Board.Plant.BeganSeconds, 1.5, 1.51);
    }
}
