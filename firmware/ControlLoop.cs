using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Ties readings, core and outputs together behind one board. Call <see cref="Step"/> once per control period.</summary>
public sealed class ControlLoop
{
    private readonly IBoard _board;
    private readonly Controller _controller;
    private readonly Readings _readings = new Readings();
    private readonly Outputs _outputs = new Outputs();
    private int _lastMicroseconds;

    /// <summary>Builds the loop and drives every output off before anything is read.</summary>
    /// <param name="board">The board; its outputs are written at once.</param>
    /// <param name="settings">Settings of the controller; must not change afterwards.</param>
    public ControlLoop(IBoard board, Settings settings)
    {
        _board = board;
        _controller = new Controller(settings);
        _lastMicroseconds = board.MicrosecondCounter();
        _board.Write(_outputs);
    }

    /// <summary>The controller, for its phase, reason and fault.</summary>
    public Controller Controller => _controller;

    /// <summary>One control period: read, tick, write.</summary>
    public void Step()
    {
        int now = _board.MicrosecondCounter();
        int elapsedMicroseconds = unchecked(now - _lastMicroseconds);
        _lastMicroseconds = now;

        // What could not be read is not believed: the core trips on it by its own rule for readings.
        if (!_board.TryRead(_readings)) _readings.SpeedValid = false;
        _controller.Tick(elapsedMicroseconds, _readings, _outputs);
        _board.Write(_outputs);
    }
}
