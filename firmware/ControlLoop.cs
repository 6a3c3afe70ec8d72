using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Ties readings, core and outputs together behind one board. Call <see cref="Step"/> once per control period.</summary>
public sealed class ControlLoop
{
    private readonly IBoard _board;
    private readonly Controller _controller;
    private readonly LoopGuard? _guard;
    private readonly Outputs _outputs = new Outputs();
    // Before the first reading the buttons count as held, so that a stuck one is no press when it is read at last.
    private Readings _readings = new Readings { StartPressed = true, ResetPressed = true };
    private Readings _spareReadings = new Readings();
    private int _lastMicroseconds;

    /// <summary>Builds the loop and drives every output off before anything is read.</summary>
    /// <param name="board">The board; its outputs are written at once.</param>
    /// <param name="settings">Settings of the controller; must not change afterwards.</param>
    /// <param name="guard">Rate, watchdog and lock at power-up; none at the desk, where there is no pin to guard.</param>
    public ControlLoop(IBoard board, Settings settings, LoopGuard? guard = null)
    {
        _board = board;
        _guard = guard;
        _controller = new Controller(settings);
        _lastMicroseconds = board.MicrosecondCounter();
        _board.Write(_outputs);
    }

    /// <summary>The controller, for its phase, reason and fault.</summary>
    public Controller Controller => _controller;

    /// <summary>What was written last.</summary>
    public Outputs Outputs => _outputs;

    /// <summary>One control period: read, tick, write, watchdog.</summary>
    public void Step()
    {
        int now = _board.MicrosecondCounter();
        int elapsedMicroseconds = unchecked(now - _lastMicroseconds);
        _lastMicroseconds = now;
        _guard?.Timing.Begin(now);

        // What could not be read is not used: the last readings stay, and the core trips on them by its own rule.
        bool isRead = _board.TryRead(_spareReadings);
        if (isRead) SwapReadings();
        _readings.Stale = !isRead;
        if (_guard == null || _guard.Admits(elapsedMicroseconds, _readings, _outputs)) _controller.Tick(elapsedMicroseconds, _readings, _outputs);
        _board.Write(_outputs);
        _guard?.Finish(_board.MicrosecondCounter());
    }

    private void SwapReadings()
    {
        Readings lastReadings = _readings;
        _readings = _spareReadings;
        _spareReadings = lastReadings;
    }
}
