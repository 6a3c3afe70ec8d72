using System;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Calibration;
using Xunit;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>A board whose memory speaks against a start, with the whole control loop on it.</summary>
public sealed class StartLockTests
{
    private readonly FakeBoard _board = new();
    private readonly MemoryChip _chip = new();

    [Fact]
    public void Start_WithoutALock_Starts()
    {
        ControlLoop loop = Loop(0);

        Press(loop);

        Assert.True(_board.CloseLine);
    }

    [Fact]
    public void Start_Locked_IsRefusedAsHeldAndClosesNothing()
    {
        ControlLoop loop = Loop(3);

        for (int i = 0; i < 5; i++) Press(loop);

        Assert.False(_board.CloseLine);
        Assert.Equal((Phase.Ready, Reason.StartRefused, Refusal.StartHeld), (loop.Controller.Phase, loop.Controller.Why.Reason, loop.Controller.Refusals));
    }

    [Fact]
    public void ResetAtTheBoard_EndsTheLock_AndAHeldStartStartsNothing()
    {
        ControlLoop loop = Loop(3);
        _board.StartPressed = true;
        _board.Step(loop);
        _board.ResetPressed = true;
        _board.Step(loop);
        _board.ResetPressed = false;
        for (int i = 0; i < 10; i++) _board.Step(loop);
        Assert.False(_board.CloseLine);

        _board.StartPressed = false;
        _board.Step(loop);
        Press(loop);

        Assert.True(_board.CloseLine);
        Assert.Equal(0, new ResetMemory(_chip, 0, ResetCause.PowerUp).WatchdogResets);
    }

    [Fact]
    public void ResetButton_HeldSincePowerUp_EndsNoLock()
    {
        _board.ResetPressed = true;
        ControlLoop loop = Loop(3);
        for (int i = 0; i < 10; i++) _board.Step(loop);
        _board.ResetPressed = false;
        _board.Step(loop);

        Press(loop);

        Assert.False(_board.CloseLine);
    }

    [Fact]
    public void Calibration_ThatWasLost_LocksUntilAChannelIsCalibratedAnew()
    {
        int place = 1024;
        Array.Clear(_chip.Bytes, place, 256);
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(_chip, place, channels);
        StartLock board = new(_board.Board, new ResetMemory(_chip, 0, ResetCause.PowerUp), store);
        ControlLoop loop = new(board, FakeBoard.Chk01());
        Press(loop);
        Assert.Equal((StoreState.Lost, StartLockReason.CalibrationLost, false), (store.State, board.Reason, _board.CloseLine));

        Assert.True(store.TryKeep(CalibrationChannel.SupplyVolts, channels[0].Nominal));
        _board.Step(loop);
        Press(loop);

        Assert.Equal((StartLockReason.None, true), (board.Reason, _board.CloseLine));
    }

    private ControlLoop Loop(int watchdogResets)
    {
        for (int i = 0; i < watchdogResets; i++) _ = new ResetMemory(_chip, 0, ResetCause.Watchdog);
        CalibrationStore store = new(_chip, 1024, CalibrationBench.Channels());
        return new ControlLoop(new StartLock(_board.Board, new ResetMemory(_chip, 0, ResetCause.PowerUp), store), FakeBoard.Chk01());
    }

    private void Press(ControlLoop loop)
    {
        _board.StartPressed = false;
        _board.Step(loop);
        _board.StartPressed = true;
        _board.Step(loop);
    }
}
