using System;
using Moq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Memory;
using Xunit;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>The whole firmware put together on pins and a memory that stand for a board's, with the three-stage starter of CHK-01.</summary>
public sealed class StarterBoardTests
{
    private const int Period = 1000;
    private const int CaseHash = 0x01020304;

    private readonly Settings _settings = FakeBoard.Chk01();
    private readonly MemoryChip _chip = new();
    private readonly Mock<ISerialLine> _line = new();
    private readonly PinMap _map;
    private readonly SoftPins _pins;

    public StarterBoardTests()
    {
        _map = SoftPins.Wired(_settings);
        _pins = new SoftPins(_map).AtRest();
    }

    [Fact]
    public void BlankMemory_StartsFromTheCompiledSettings()
    {
        StarterBoard board = PoweredUp();

        Assert.Equal(PowerUpProblem.None, board.PowerUp.Problem);
        Assert.True(Start(board));
    }

    [Fact]
    public void SettingsThatWereKept_GoBeforeTheCompiledOnes()
    {
        PoweredUp();
        _settings.PeakAmps = 600f;

        StarterBoard board = PoweredUp();

        Assert.Equal(700f, Memory.Settings.Kept.PeakAmps);
        Assert.True(Start(board));
    }

    [Fact]
    public void SettingsThatWereLost_AreNotReplacedByTheCompiledOnes()
    {
        PoweredUp();
        Array.Fill(_chip.Bytes, (byte)0x5a);

        StarterBoard board = PoweredUp();

        Assert.Equal((StoreState.Lost, PowerUpProblem.SettingsUnsound), (Memory.Settings.State, board.PowerUp.Problem));
        Assert.False(Start(board));
    }

    [Fact]
    public void NewSettings_BuildTheControllerAnewBehindThePeriod_AndShutTheLockAgain()
    {
        StarterBoard board = PoweredUp();
        ControlLoop before = board.Loop;
        Settings next = FakeBoard.Chk01(settings => settings.ZeroAmps = 7f);

        Assert.True(Memory.Settings.TryKeep(next, SettingsChecksum.Of(next), CaseHash));
        Assert.Same(before, board.Loop);
        Step(board, 1);

        Assert.NotSame(before, board.Loop);
        Assert.False(board.PowerUp.IsOpen);
        Assert.Equal(7f, _map.Standstill.ZeroAmps);
        Step(board, 600);
        Assert.True(Start(board));
    }

    [Fact]
    public void SettingsThatTheWiringDoesNotFit_AreRefusedByTheLock()
    {
        StarterBoard board = PoweredUp();
        // The channel ends at 1200 A.
        Settings next = FakeBoard.Chk01(settings => settings.InstantTripAmps = 1500f);

        Assert.True(Memory.Settings.TryKeep(next, SettingsChecksum.Of(next), CaseHash));
        Step(board, 1000);

        Assert.Equal((BoardProblem.RangeTooSmall, PowerUpProblem.WiringRefused), (board.Wiring.Problem, board.PowerUp.Problem));
        Assert.Equal((float)BoardProblem.RangeTooSmall, board.PowerUp.Value);
        Assert.False(Start(board));
    }

    [Fact]
    public void TwoRolesOnOnePin_LeaveEveryPinAloneAndTheLinkAlive()
    {
        _map.Wire(PinRole.LineCoil, _map.Pin(PinRole.StageCoil1), false);
        Mock<IBoardPins> pins = new(MockBehavior.Strict);
        pins.Setup(found => found.MicrosecondCounter()).Returns(() => _pins.CounterMicroseconds);

        StarterBoard board = Build(pins.Object);
        Step(board, 600);

        Assert.Equal((BoardProblem.PinUsedTwice, PowerUpProblem.WiringRefused), (board.Wiring.Problem, board.PowerUp.Problem));
        _line.Verify(line => line.Read(It.IsAny<byte[]>(), It.IsAny<int>()), Times.AtLeast(600));
    }

    [Fact]
    public void KeptCalibration_IsWhatIsMeasuredBy_AndWhatTheWiringIsCheckedWith()
    {
        float nominal = _map.Armature.Calibration.UnitsPerCount;
        BoardMemory memory = new(_chip, ResetCause.PowerUp);
        CalibratedBoard calibrated = new(new ShutBoard(_pins), new InputPanel(_map, _pins), _map);
        CalibrationStore store = new(_chip, memory.CalibrationAddress, calibrated.Channels);
        // 0.8 of the gain: 1200 A become 960 A, and the trip is at 1000 A.
        ChannelCalibration pair = new() { OffsetCounts = _map.Armature.Calibration.OffsetCounts, UnitsPerCount = 0.8f * nominal };
        Assert.True(store.TryKeep(CalibrationChannel.ArmatureAmps, pair));
        _map.Armature.Calibration = calibrated.Channels[(int)CalibrationChannel.ArmatureAmps].Nominal;
        _map.Supply.Calibration = calibrated.Channels[(int)CalibrationChannel.SupplyVolts].Nominal;

        StarterBoard board = PoweredUp();

        Assert.Equal(0.8f * nominal, _map.Armature.Calibration.UnitsPerCount);
        Assert.Equal((BoardProblem.RangeTooSmall, 960f), (board.Wiring.Problem, MathF.Round(board.Wiring.Value)));
    }

    [Fact]
    public void CountsOfThePeriod_ReachTheCalibration()
    {
        CalibratedBoard board = new(new PanelBoard(_map, _pins), null, _map);
        Assert.False(board.Channels[(int)CalibrationChannel.SupplyVolts].IsFitted);
        PanelBoard panel = new(_map, _pins);
        board = new CalibratedBoard(panel, panel.Inputs, _map);
        _pins.ShowCounts(PinRole.SupplyVolts, 1234);

        board.TryRead(new Readings());

        CalibratedChannel supply = board.Channels[(int)CalibrationChannel.SupplyVolts];
        Assert.Equal((1234, 4095), (supply.Counts, supply.FullScaleCounts));
        Assert.False(board.Channels[(int)CalibrationChannel.FieldAmps].IsFitted);
    }

    [Fact]
    public void ThreeWatchdogResetsInARow_LockStartingOutUntilThePressAtTheBoard()
    {
        for (int i = 0; i < 2; i++) PoweredUp(ResetCause.Watchdog);
        StarterBoard board = PoweredUp(ResetCause.Watchdog);

        Assert.False(Start(board));
        Press(board, PinRole.ResetButton);
        Assert.True(Start(board));
    }

    [Fact]
    public void HeatIsKept_AndIsThereForTheNextController()
    {
        StarterBoard board = PoweredUp();
        board.Loop.Controller.Heat.Motor.Level = 0.5f;
        Step(board, 1);

        Assert.Equal(0.5f, PoweredUp().Loop.Controller.Heat.Motor.Level, 0.01f);
    }

    [Fact]
    public void StartOverTheLink_NeedsTheSwitchAtItsPin()
    {
        PermitSwitch none = new(null, false);
        _map.Wire(PinRole.LinkPermit, (int)PinRole.LinkPermit, true);
        PermitSwitch wired = new(_pins.Input(_map.Pin(PinRole.LinkPermit)), _map.IsActiveLow(PinRole.LinkPermit));

        _pins.Close(PinRole.LinkPermit, false);
        Assert.Equal((false, false), (none.IsGiven(), wired.IsGiven()));
        _pins.Close(PinRole.LinkPermit);
        Assert.True(wired.IsGiven());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(16)]
    [InlineData(64)]
    public void Memory_OfFourKilobytesInPagesOf64BytesOrLess_HoldsEverything(int pageBytes)
    {
        MemoryChip chip = new(4096, pageBytes);
        BoardMemory memory = new(chip, ResetCause.PowerUp);
        memory.FillBlank(_settings, SettingsChecksum.Of(_settings), CaseHash);

        Assert.InRange(BoardMemory.BytesNeeded(chip), 1, 4096);
        Assert.Equal(StoreState.Sound, memory.Settings.State);
    }

    [Fact]
    public void TwentyThousandPeriods_AllocateNothing()
    {
        // A mock of the line would allocate at each call.
        StarterBoard board = Build(_pins, line: new SilentLine());
        Step(board, 1000);

        long before = GC.GetAllocatedBytesForCurrentThread();
        Step(board, 20_000);

        Assert.Equal(0L, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private BoardMemory Memory { get; set; } = null!;

    private StarterBoard Build(IBoardPins pins, ResetCause cause = ResetCause.PowerUp, ISerialLine? line = null)
    {
        Memory = new BoardMemory(_chip, cause);
        Memory.FillBlank(_settings, SettingsChecksum.Of(_settings), CaseHash);
        return new StarterBoard(_map, pins, line ?? _line.Object, Memory, new BoardIdentity { Name = "bench", ResetCause = cause });
    }

    // Up, and through the half second of the lock where nothing speaks against it.
    private StarterBoard PoweredUp(ResetCause cause = ResetCause.PowerUp)
    {
        StarterBoard board = Build(_pins, cause);
        Step(board, 600);
        return board;
    }

    private bool Start(StarterBoard board)
    {
        Press(board, PinRole.StartButton);
        return _pins.IsOn(PinRole.LineCoil);
    }

    private void Press(StarterBoard board, PinRole button)
    {
        _pins.Close(button);
        Step(board, 25);
        _pins.Close(button, false);
        Step(board, 25);
    }

    private void Step(StarterBoard board, int periods)
    {
        for (int i = 0; i < periods; i++)
        {
            _pins.CounterMicroseconds = unchecked(_pins.CounterMicroseconds + Period);
            _pins.Close(PinRole.LineContact, _pins.IsOn(PinRole.LineCoil));
            for (int stage = 0; stage < 3; stage++) _pins.Close(PinRole.StageContact1 + stage, _pins.IsOn(PinRole.StageCoil1 + stage));
            // The shaft turns: standstill would have to be waited for.
            _pins.EdgeCount++;
            _pins.LastEdgeMicroseconds = _pins.CounterMicroseconds;
            board.Step();
        }
    }

    private sealed class SilentLine : ISerialLine
    {
        public int Read(byte[] target, int most) => 0;

        public int Room() => 0;

        public void Write(byte[] source, int first, int count)
        {
        }
    }
}
