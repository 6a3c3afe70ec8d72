using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// The whole firmware on any board, real or in memory: inputs and outputs, calibration, memory, lock on starting, serial link and
/// control loop, put together in the one order in which they belong. Construct it, then call <see cref="Step"/> whenever
/// <see cref="IsDue"/>.
/// </summary>
public sealed class StarterBoard
{
    private readonly PinMap _map;
    private readonly IBoardPins _pins;
    private readonly BoardMemory _memory;
    private readonly OutputPanel _outputs;
    private readonly WatchdogPulse? _watchdog;
    private readonly LinkedBoard _board;
    private readonly LinkPort _link;
    private readonly ExchangePort _exchange = new ExchangePort();
    private ExchangeBoard? _exchangeBoard;
    private readonly int _bootNumber;
    private Settings _settings;
    private LoopGuard _guard;
    private int _lastMicroseconds;

    /// <summary>The rate of the loop, over all settings since power-up.</summary>
    public readonly LoopTiming Timing;

    /// <summary>Opens the pins, outputs off before any input, reads what was kept, and builds the controller. Drives nothing but off.</summary>
    /// <param name="map">The wiring; its calibrations are replaced by those in force, its zero current by that of settings that have one.</param>
    /// <param name="pins">The board.</param>
    /// <param name="line">The serial line.</param>
    /// <param name="memory">What is kept; for compiled settings, <see cref="BoardMemory.FillBlank"/> first.</param>
    /// <param name="identity">Who the board is; the number of its boot check is filled in here.</param>
    /// <remarks>A wiring that cannot be opened leaves every pin alone; the link still answers, and <see cref="Wiring"/> says why.</remarks>
    public StarterBoard(PinMap map, IBoardPins pins, ISerialLine line, BoardMemory memory, BoardIdentity identity)
    {
        _map = map;
        _pins = pins;
        _memory = memory;
        _settings = memory.Settings.Kept;
        _lastMicroseconds = pins.MicrosecondCounter();
        _bootNumber = BootCheck.Run();
        identity.BootCheckHash = _bootNumber;
        Timing = new LoopTiming(map.PeriodMicroseconds, map.LateMicroseconds);

        Wiring = new BoardCheck(map, _settings);
        PanelBoard? panel = Wiring.CanOpen ? new PanelBoard(map, pins) : null;
        _outputs = panel != null ? panel.Outputs : new OutputPanel(new PinMap(), pins);
        if (IsOpened(PinRole.Watchdog)) _watchdog = new WatchdogPulse(pins.Output(map.Pin(PinRole.Watchdog), false));
        IDigitalInput? permit = IsOpened(PinRole.LinkPermit) ? pins.Input(map.Pin(PinRole.LinkPermit)) : null;

        CalibratedBoard calibrated = new CalibratedBoard(panel != null ? panel : new ShutBoard(pins), panel?.Inputs, map);
        CalibrationStore calibration = new CalibrationStore(memory.Memory, memory.CalibrationAddress, calibrated.Channels);
        StartLock startLock = new StartLock(calibrated, memory.Resets, calibration);
        MemoryReport report = new MemoryReport(memory.Settings, calibration, memory.Resets, startLock);
        CalibrationPort calibrationPort = new CalibrationPort(calibrated.Channels, calibration, report);
        _link = new LinkPort(line, memory.Settings, new PermitSwitch(permit, map.IsActiveLow(PinRole.LinkPermit)), identity, calibrationPort, _exchange);
        _board = new LinkedBoard(startLock, _link);
        _guard = BuildGuard();
        Loop = BuildLoop();
    }

    /// <summary>The check of the wiring with the settings in force.</summary>
    public BoardCheck Wiring { get; private set; }

    /// <summary>The loop; another one after each upload of settings.</summary>
    public ControlLoop Loop { get; private set; }

    /// <summary>The lock at power-up, with its reason; shut again after each upload of settings.</summary>
    public PowerUpCheck PowerUp => _guard.PowerUp;

    /// <summary>True while a simulated machine stands in for the real one and the desk keeps the time: every step is then as good as any.</summary>
    public bool IsInLockstep => _exchangeBoard != null && _exchange.Mode == ExchangeMode.Lockstep;

    /// <summary>True while the link has nothing to do.</summary>
    public bool IsLinkIdle => _link.IsIdle;

    /// <summary>True when the next control period is to begin.</summary>
    public bool IsDue() => Timing.IsDue(_pins.MicrosecondCounter());

    /// <summary>One control period, and behind it what must not delay it: memory, and new settings where some have come.</summary>
    public void Step()
    {
        if (_exchangeBoard != null)
        {
            StepExchange(_exchangeBoard);
            return;
        }

        Loop.Step();
        int now = _pins.MicrosecondCounter();
        int elapsedMicroseconds = unchecked(now - _lastMicroseconds);
        _lastMicroseconds = now;
        bool isAtRest = AreCoilsOff(Loop.Outputs);
        _memory.Resets.Step(elapsedMicroseconds, isAtRest);
        _memory.Heat.Step(elapsedMicroseconds, isAtRest, Loop.Controller.Heat);
        if (_exchange.IsOn) BeginExchange();
        // The store holds another object after an upload, and takes one only while nothing runs.
        if (_memory.Settings.Kept == _settings) return;
        _guard = BuildGuard();
        Loop = BuildLoop();
    }

    // Without the loop's guard the watchdog gets no pulses either: what it holds has no business to be on.
    private void StepExchange(ExchangeBoard board)
    {
        int now = _pins.MicrosecondCounter();
        Timing.Begin(now);
        board.Step(unchecked(now - _lastMicroseconds));
        _lastMicroseconds = now;
        Timing.Finish(_pins.MicrosecondCounter());
        if (_exchange.IsOn && _exchange.HasBegun)
        {
            BeginExchange();
        }
        else if (!_exchange.IsOn)
        {
            // As after power-up: the lock is shut until the real readings prove that all is at rest.
            _exchangeBoard = null;
            _guard = BuildGuard();
            Loop = BuildLoop();
        }
    }

    private void BeginExchange()
    {
        _exchange.HasBegun = false;
        _exchangeBoard = new ExchangeBoard(_exchange, _link, _outputs, _settings);
    }

    private static bool AreCoilsOff(Outputs outputs) =>
        !outputs.CloseLine && !outputs.CloseBrake && !outputs.CloseField && outputs.CloseStages == 0;

    private bool IsOpened(PinRole role) => Wiring.CanOpen && _map.IsFitted(role);

    private LoopGuard BuildGuard()
    {
        _settings = _memory.Settings.Kept;
        // What proves that no current flows is the controller's own number, where it has one.
        if (_settings.ZeroAmps > 0f) _map.Standstill.ZeroAmps = _settings.ZeroAmps;
        Wiring = new BoardCheck(_map, _settings);
        return new LoopGuard(Timing, _watchdog, new PowerUpCheck(_settings, _memory.Settings.Checksum, Wiring, _outputs, _bootNumber));
    }

    private ControlLoop BuildLoop()
    {
        ControlLoop loop = new ControlLoop(_board, _settings, _guard);
        _memory.Heat.Restore(loop.Controller.Heat);
        _link.Serve(loop.Controller, _guard.PowerUp);
        return loop;
    }
}
