using System;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>The control loop with rate, watchdog and lock on a board of pins kept in memory.</summary>
public sealed class GuardedLoopTests
{
    private const int Period = 1000;

    private readonly Settings _settings = FakeBoard.Chk01();
    private readonly PinMap _map;
    private readonly SoftPins _pins;
    private readonly PanelBoard _board;
    private readonly LoopGuard _guard;
    private readonly ControlLoop _loop;

    public GuardedLoopTests()
    {
        _map = SoftPins.Wired(_settings);
        _pins = new SoftPins(_map).AtRest();
        _board = new PanelBoard(_map, _pins);
        PowerUpCheck powerUp = new(_settings, SettingsChecksum.Of(_settings), new BoardCheck(_map, _settings), _board.Outputs);
        _guard = new LoopGuard(new LoopTiming(Period, 500), new WatchdogPulse(_pins.Output(_map.Pin(PinRole.Watchdog), false)), powerUp);
        _loop = new ControlLoop(_board, _settings, _guard);
    }

    [Fact]
    public void Step_WritesEveryOutputAndThenTheWatchdog()
    {
        _pins.Logs = true;

        Step(1);

        Assert.Equal(8, _pins.Writes.Count);
        Assert.Equal("Watchdog 1", _pins.Writes[^1]);
    }

    [Fact]
    public void Locked_NothingIsSwitchedAndTheControllerStandsStill()
    {
        _pins.Close(PinRole.LineContact);
        _pins.Close(PinRole.StopChain, false);
        Step(5000);

        Assert.Equal(PowerUpProblem.LineNotOpen, _guard.PowerUp.Problem);
        Assert.Equal((Phase.Ready, FaultId.None), (_loop.Controller.Phase, _loop.Controller.Fault.Id));
        Assert.Equal(-1, _board.Outputs.FirstCoilOn());
    }

    [Fact]
    public void Locked_TrippedLampFlashesTheReason()
    {
        _pins.Close(PinRole.LineContact);
        // What was there before the contact was looked at has been shown by then.
        Step(5000);
        bool before = true;
        int flashes = 0;
        for (int i = 0; i < 6000; i++)
        {
            Step(1);
            bool isLit = _pins.IsOn(PinRole.TrippedLamp);
            if (isLit && !before) flashes++;
            before = isLit;
        }

        // Nine flashes of 0.5 s and a pause of 1.5 s.
        Assert.Equal((int)PowerUpProblem.LineNotOpen, flashes);
    }

    [Fact]
    public void Locked_WatchdogIsServedAllTheSame()
    {
        _pins.Close(PinRole.LineContact);
        Step(10);
        bool before = _pins.IsOn(PinRole.Watchdog);

        Step(1);

        Assert.NotEqual(before, _pins.IsOn(PinRole.Watchdog));
    }

    [Fact]
    public void PeriodTooLate_GetsNoWatchdogPulse()
    {
        Step(10);
        bool before = _pins.IsOn(PinRole.Watchdog);

        _pins.CounterMicroseconds += Period + 501;
        _loop.Step();
        Assert.Equal((before, 1, 501), (_pins.IsOn(PinRole.Watchdog), _guard.Timing.LateCount, _guard.Timing.WorstLateMicroseconds));

        Step(1);
        Assert.NotEqual(before, _pins.IsOn(PinRole.Watchdog));
    }

    [Fact]
    public void WholeStartsAndFaults_AMillionPeriods_AllocateNothing()
    {
        Step(4000);
        Assert.True(_guard.PowerUp.IsOpen);
        Turn(50);
        Cycle();

        long before = GC.GetAllocatedBytesForCurrentThread();
        int started = 0;
        for (int i = 0; i < 1000; i++) started += Cycle();
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal((0L, 1000), (allocated, started));
    }

    // A thousand periods of a shaft that turns: reset, start, a broken wire.
    private int Cycle()
    {
        _pins.Show(PinRole.ArmatureAmps, _map.Armature, 0);
        Press(PinRole.ResetButton);
        Press(PinRole.StartButton);
        Turn(700);
        bool isStarted = _pins.IsOn(PinRole.LineCoil);
        _pins.ShowCounts(PinRole.ArmatureAmps, 0);
        Turn(200);
        return isStarted && !_pins.IsOn(PinRole.LineCoil) ? 1 : 0;
    }

    private void Press(PinRole button)
    {
        _pins.Close(button);
        Turn(25);
        _pins.Close(button, false);
        Turn(25);
    }

    private void Turn(int periods)
    {
        for (int i = 0; i < periods; i++)
        {
            _pins.Close(PinRole.LineContact, _pins.IsOn(PinRole.LineCoil));
            for (int stage = 0; stage < 3; stage++) _pins.Close(PinRole.StageContact1 + stage, _pins.IsOn(PinRole.StageCoil1 + stage));
            _pins.EdgeCount++;
            _pins.LastEdgeMicroseconds = _pins.CounterMicroseconds;
            Step(1);
        }
    }

    private void Step(int periods)
    {
        for (int i = 0; i < periods; i++)
        {
            _pins.CounterMicroseconds = unchecked(_pins.CounterMicroseconds + Period);
            _loop.Step();
        }
    }
}
