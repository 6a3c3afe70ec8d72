using System;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Desk.Tests;

/// <summary>A simulated machine in the place of a board's inputs and outputs, over the link, on the whole firmware.</summary>
public sealed class ExchangeTests : IDisposable
{
    private const string Shipped = "line-shaft.toml";
    private readonly AskingLine _line = new();
    private readonly DeskBench _bench;

    public ExchangeTests()
    {
        _bench = new DeskBench(Shipped, "", _line);
        _line.Step = () => _bench.Until(() => false, 0.001);
        // Behind the lock at power-up.
        _bench.Until(() => _bench.Board.Starter.PowerUp.IsOpen, 5).Until(() => false, 0.1);
    }

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void Exchange_StartPressed_ClosesTheSimulatedLineAndNoRealCoil()
    {
        Assert.Equal(LinkReason.Done, Begin(ExchangeMode.Lockstep));

        Assert.Equal(Phase.Ready, Show(0, ExchangeSwitches.None).Phase);
        ExchangeAnswer started = Show(1000, ExchangeSwitches.StartPressed);

        Assert.Equal(Phase.Accelerating, started.Phase);
        Assert.Equal(ExchangeOutputs.CloseLine, started.Outputs & ExchangeOutputs.CloseLine);
        Assert.Equal(1, started.Ticks);
        Assert.False(_bench.Board.IsAnyCoilOn);
    }

    [Fact]
    public void Exchange_InRealTime_TicksOnByItself()
    {
        Assert.Equal(LinkReason.Done, Begin(ExchangeMode.RealTime));
        Show(0, ExchangeSwitches.None);
        _bench.Until(() => false, 0.02);

        // Twenty periods alone, three in which the request comes in.
        Assert.InRange(Show(0, ExchangeSwitches.None).Ticks, 20, 26);
    }

    [Fact]
    public void Exchange_AfterTheStatedSilence_IsOver()
    {
        Begin(ExchangeMode.Lockstep, silenceMicroseconds: 50_000);
        Show(0, ExchangeSwitches.None);
        _bench.Until(() => false, 0.06);

        Assert.Equal(LinkReason.NotExchanging, _line.Do(new ExchangeRequest().Write));
        Assert.Equal(PowerUpProblem.Proving, _bench.Board.Starter.PowerUp.Problem);
    }

    [Fact]
    public void End_GivesTheBoardItsMachineBack_WhichThenStarts()
    {
        Begin(ExchangeMode.Lockstep);
        Show(0, ExchangeSwitches.None);

        Assert.Equal(LinkReason.Done, _line.Do(MessageId.EndExchange));
        _bench.Start().Until(() => _bench.Controller.Phase == Phase.Running, 5);

        Assert.Equal(Phase.Running, _bench.Controller.Phase);
    }

    [Fact]
    public void Begin_WhileTheRealMachineRuns_IsRefused()
    {
        _bench.Start().Until(() => _bench.Board.IsAnyCoilOn, 1);

        Assert.Equal(LinkReason.NotWhileRunning, Begin(ExchangeMode.Lockstep));
        Assert.True(_bench.Board.IsAnyCoilOn);
    }

    // A trip is not forgotten by trying something else: that would be a reset past the reset.
    [Fact]
    public void Begin_WhileTripped_IsRefused()
    {
        _bench.Board.Plant.Obey(OperatorCommand.EmergencyStop);
        _bench.Until(() => _bench.Controller.Phase == Phase.Tripped, 1);

        Assert.Equal(LinkReason.NotWhileRunning, Begin(ExchangeMode.Lockstep));
        Assert.Equal(FaultId.EmergencyStop, _bench.Controller.Fault.Id);
    }

    [Theory]
    [InlineData(19_999, ExchangeMode.Lockstep)]
    [InlineData(60_000_001, ExchangeMode.Lockstep)]
    [InlineData(1_000_000, (ExchangeMode)2)]
    public void Begin_OutOfRange_IsRefused(int silenceMicroseconds, ExchangeMode mode) =>
        Assert.Equal(LinkReason.OutOfRange, Begin(mode, silenceMicroseconds));

    [Fact]
    public void Exchange_SettingsAndCalibration_Wait()
    {
        Begin(ExchangeMode.Lockstep);

        Assert.Equal(LinkReason.NotWhileExchanging, _line.Do(new UploadBegin().Write));
        Assert.Equal(LinkReason.NotWhileExchanging, _line.Do(new CalibrationRequest().Write));
        Assert.Equal(LinkReason.NotWhileExchanging, _line.Do(MessageId.BeginNoise));
    }

    [Fact]
    public void Exchange_StopOverTheLink_IsAPressOnTheNextReadings()
    {
        Begin(ExchangeMode.Lockstep);
        Show(0, ExchangeSwitches.None);
        Show(1000, ExchangeSwitches.StartPressed);

        Assert.Equal(LinkReason.Done, _line.Do(MessageId.Stop));

        Assert.Equal(ExchangeOutputs.None, Show(1000, ExchangeSwitches.None).Outputs & ExchangeOutputs.CloseLine);
    }

    [Fact]
    public void Exchange_StaleReadings_TripByTheCoresOwnRule()
    {
        Begin(ExchangeMode.Lockstep);
        Show(0, ExchangeSwitches.None);

        Assert.Equal(FaultId.ReadingInvalid, Show(1000, ExchangeSwitches.Stale).Fault);
    }

    private LinkReason Begin(ExchangeMode mode, int silenceMicroseconds = 1_000_000) =>
        _line.Do(new ExchangeBegin { Mode = mode, SilenceMicroseconds = silenceMicroseconds }.Write);

    private ExchangeAnswer Show(int elapsedMicroseconds, ExchangeSwitches switches)
    {
        ExchangeAnswer answer = new();
        answer.Read(_line.Ask(new ExchangeRequest
        {
            ElapsedMicroseconds = elapsedMicroseconds,
            SupplyVolts = 220,
            Permissives = -1,
            Switches = switches | ExchangeSwitches.SpeedValid,
        }.Write));
        return answer;
    }
}
