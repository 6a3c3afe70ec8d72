using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests;

public sealed class ControlLoopTests
{
    private readonly FakeBoard _board = new();

    [Fact]
    public void Constructor_AnyBoard_WritesEverythingOffAndReadsNothing()
    {
        _ = new ControlLoop(_board.Board, FakeBoard.Chk01());

        Assert.Equal(["counter", "write line 0 stages 0"], _board.Calls);
        Assert.False(_board.TrippedLamp);
    }

    [Fact]
    public void Step_EveryTime_ReadsThenWritesOnce()
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.Calls.Clear();

        _board.Step(loop);
        _board.Step(loop);

        string[] step = ["counter", "read", "write line 0 stages 0"];
        Assert.Equal(step.Concat(step), _board.Calls);
    }

    [Fact]
    public void Step_StartPressed_WritesTheLineInTheSamePeriod()
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.Step(loop);
        _board.Calls.Clear();

        _board.StartPressed = true;
        _board.Step(loop);

        Assert.Equal(["counter", "read", "write line 1 stages 0"], _board.Calls);
    }

    [Fact]
    public void Step_WholeStart_ClosesLineAndStagesInOrder_Chk01()
    {
        ControlLoop loop = _board.Started(FakeBoard.Chk01());

        List<(float Speed, int Stages)> cutouts = [];
        for (int step = 0; step < 1000; step++)
        {
            int before = _board.CloseStages;
            _board.SpeedRadPerSec = step * 0.125f;
            _board.Step(loop);
            if (_board.CloseStages != before) cutouts.Add((_board.SpeedRadPerSec, _board.CloseStages));
            if (loop.Controller.Phase == Phase.Running) break;
        }

        Assert.Equal([(50f, 1), (75f, 3), (87.5f, 7)], cutouts);
        Assert.Equal(Phase.Running, loop.Controller.Phase);
        Assert.True(_board.CloseLine);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(int.MaxValue - 5_000)]
    [InlineData(int.MaxValue)]
    [InlineData(int.MinValue)]
    [InlineData(-5_000)]
    public void Step_AnyCounterStart_ElapsedIsTheDifferenceAcrossTheWrap(int counterMicroseconds)
    {
        FakeBoard board = new(counterMicroseconds);
        ControlLoop loop = board.Started(FakeBoard.Chk01(settings => settings.MinimumDwellMicroseconds = 20_000));
        board.SpeedRadPerSec = 60f;
        board.Step(loop);
        Assert.Equal((Reason.MinimumDwell, 20_000), (loop.Controller.Why.Reason, loop.Controller.Why.MicrosecondsLeft));

        board.Step(loop, 7_001);
        Assert.Equal((Reason.MinimumDwell, 12_999), (loop.Controller.Why.Reason, loop.Controller.Why.MicrosecondsLeft));

        board.Step(loop, 12_998);
        Assert.Equal((Reason.MinimumDwell, 1), (loop.Controller.Why.Reason, loop.Controller.Why.MicrosecondsLeft));
    }

    [Fact]
    public void Step_FirstOne_CountsFromTheConstructor()
    {
        FakeBoard board = new(123_456_789) { LineWelded = true };
        ControlLoop loop = new(board.Board, FakeBoard.Chk01());

        board.Step(loop, 99_999);
        Assert.Equal(Phase.Ready, loop.Controller.Phase);

        board.Step(loop, 1);
        Assert.Equal(FaultId.ContactDidNotOpen, loop.Controller.Fault.Id);
    }

    [Fact]
    public void Step_CounterRunsBackwards_CountsAsNoTime()
    {
        ControlLoop loop = _board.Started(FakeBoard.Chk01(settings => settings.MinimumDwellMicroseconds = 20_000));
        _board.SpeedRadPerSec = 60f;
        _board.Step(loop);

        _board.Step(loop, -500);

        Assert.Equal((Reason.MinimumDwell, 20_000), (loop.Controller.Why.Reason, loop.Controller.Why.MicrosecondsLeft));
    }

    [Fact]
    public void Step_ReadFailsWhileRunning_TripsAndWritesEverythingOff()
    {
        ControlLoop loop = _board.Started(FakeBoard.Chk01());
        _board.SpeedRadPerSec = 96f;
        for (int i = 0; i < 10; i++) _board.Step(loop);
        Assert.Equal((true, 7), (_board.CloseLine, _board.CloseStages));

        _board.ReadFails = true;
        _board.Step(loop);

        Assert.Equal((false, 0, true), (_board.CloseLine, _board.CloseStages, _board.TrippedLamp));
        Assert.Equal(FaultId.ReadingInvalid, loop.Controller.Fault.Id);
    }

    [Fact]
    public void Step_ReadFailsOnThePressOfStart_StartsNothing()
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.Step(loop);

        _board.ReadFails = true;
        _board.StartPressed = true;
        _board.Step(loop);
        _board.ReadFails = false;
        for (int i = 0; i < 10; i++) _board.Step(loop);

        Assert.False(_board.CloseLine);
        Assert.Equal(Phase.Tripped, loop.Controller.Phase);
    }

    [Fact]
    public void Step_ReadWorksAgain_StaysTrippedUntilReset()
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.ReadFails = true;
        _board.Step(loop);
        _board.ResetPressed = true;
        _board.Step(loop);
        Assert.Equal(Phase.Tripped, loop.Controller.Phase);

        _board.ReadFails = false;
        _board.ResetPressed = false;
        _board.Step(loop);
        Assert.Equal(Phase.Tripped, loop.Controller.Phase);

        _board.ResetPressed = true;
        _board.Step(loop);
        Assert.Equal(Phase.Ready, loop.Controller.Phase);
        Assert.False(_board.TrippedLamp);
    }

    [Fact]
    public void Step_FailedReadLeavesGarbage_NothingOfItIsUsed()
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.Step(loop);
        _board.ReadFails = true;
        _board.Garbage = readings =>
        {
            readings.EmergencyStop = true;
            readings.SupplyVolts = 1e9f;
        };

        _board.Step(loop);

        FaultLatch fault = loop.Controller.Fault;
        Assert.Equal((FaultId.ReadingInvalid, Channel.All), (fault.Id, fault.Channel));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Step_FailedReadWhileResetIsHeld_MakesNoNewPressOfIt(bool fromTheFirstRead)
    {
        ControlLoop loop = new(_board.Board, FakeBoard.Chk01());
        _board.ResetPressed = true;
        _board.Garbage = readings => readings.ResetPressed = false;
        if (!fromTheFirstRead) _board.Step(loop);

        _board.ReadFails = true;
        _board.Step(loop);
        _board.ReadFails = false;
        _board.Step(loop);

        Assert.Equal(Phase.Tripped, loop.Controller.Phase);
    }

    [Fact]
    public void Step_UnsoundSettings_KeepsEverythingOff()
    {
        ControlLoop loop = _board.Started(FakeBoard.Chk01(settings => settings.InstantTripAmps = float.NaN));
        for (int i = 0; i < 10; i++) _board.Step(loop);

        Assert.All(_board.Calls.Where(call => call.StartsWith("write", StringComparison.Ordinal)), call => Assert.Equal("write line 0 stages 0", call));
        Assert.Equal(Phase.NotSetUp, loop.Controller.Phase);
        Assert.True(_board.TrippedLamp);
    }
}
