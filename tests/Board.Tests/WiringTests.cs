using System;
using StarterCtl.Core;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>The shipped wiring fits the compiled settings; with one thing wrong it is refused by name and number.</summary>
public sealed class WiringTests
{
    private readonly PinMap _map = Wiring.Build();
    private readonly Settings _settings = CaseSettings.Build();

    [Fact]
    public void Shipped_FitsTheCompiledSettings()
    {
        BoardCheck check = new(_map, _settings);

        Assert.Equal((BoardProblem.None, true), (check.Problem, check.CanOpen));
        Assert.Equal(CaseSettings.PeriodMicroseconds, _map.PeriodMicroseconds);
    }

    [Fact]
    public void TwoRolesOnOnePin_AreRefusedAndNotEvenOpened()
    {
        _map.Wire(PinRole.LineCoil, _map.Pin(PinRole.StopChain), false);

        BoardCheck check = Refused(BoardProblem.PinUsedTwice, PinRole.LineCoil, 5f, 5f);
        Assert.Equal((PinRole.StopChain, false), (check.OtherRole, check.CanOpen));
    }

    [Fact]
    public void PinOfTheNumberOfAChannel_IsAnother()
    {
        _map.Wire(PinRole.LineCoil, 0, false);

        Assert.Equal(BoardProblem.None, new BoardCheck(_map, _settings).Problem);
    }

    [Fact]
    public void CurrentChannelThatEndsBelowTheTrip_IsRefused()
    {
        // 2032 counts above the middle at 0.02 A: 40.64 A, and the trip is at 48 A.
        _map.Armature.Calibration.UnitsPerCount = 0.02f;

        Assert.True(Refused(BoardProblem.RangeTooSmall, PinRole.ArmatureAmps, 40.64f, 48f).CanOpen);
    }

    [Fact]
    public void MoreEdgesThanTheLoopCounts_AreRefused()
    {
        // 695.65 rad/s believed at most, 60 slots: 6643 edges a second.
        _map.Pulses.EdgesPerTurn = 60;

        Refused(BoardProblem.TooManyEdges, PinRole.SpeedEdges, 6643f, 1000f);
    }

    [Theory]
    [InlineData(PinRole.SupplyVolts)]
    [InlineData(PinRole.ArmatureAmps)]
    [InlineData(PinRole.StopChain)]
    public void RoleThatEveryBoardReads_WithoutAPin_IsNotEvenOpened(PinRole role)
    {
        _map.Wire(role, PinMap.NotFitted, false);

        Assert.False(Refused(BoardProblem.PinMissing, role, PinMap.NotFitted, 0f).CanOpen);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    public void CompiledSettings_ChangedByHandOrOfAnotherVersion_AreNotKept(int checksumChange, int stageChange)
    {
        BoardMemory memory = new(new VolatileMemory(4096), ResetCause.Unknown);
        _settings.StageCount += stageChange;

        memory.FillBlank(_settings, CaseSettings.Checksum + checksumChange, CaseSettings.CaseHash);

        Assert.Equal(StoreState.Blank, memory.Settings.State);
        Assert.NotEqual(SettingId.None, memory.Settings.Kept.FirstProblem());
    }

    [Fact]
    public void CompiledSettings_AreKeptInABlankMemory()
    {
        BoardMemory memory = new(new VolatileMemory(4096), ResetCause.Unknown);

        memory.FillBlank(_settings, CaseSettings.Checksum, CaseSettings.CaseHash);

        Assert.Equal((StoreState.Sound, CaseSettings.Checksum, CaseSettings.CaseHash), (memory.Settings.State, memory.Settings.Checksum, memory.Settings.CaseHash));
        Assert.InRange(BoardMemory.BytesNeeded(memory.Memory), 500, 4096);
    }

    private BoardCheck Refused(BoardProblem problem, PinRole role, float value, float limit)
    {
        BoardCheck check = new(_map, _settings);
        Assert.Equal((problem, role), (check.Problem, check.Role));
        Assert.Equal(value, check.Value, Math.Abs(value) * 1e-4);
        Assert.Equal(limit, check.Limit, Math.Abs(limit) * 1e-4);
        return check;
    }
}
