using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// A board whose inputs and outputs are a machine that is simulated at the desk, with a control loop of its own on them. The real
/// outputs stay off throughout.
/// </summary>
public sealed class ExchangeBoard : IBoard
{
    private readonly ExchangePort _exchange;
    private readonly LinkPort _link;
    private readonly OutputPanel _realOutputs;
    private readonly ControlLoop _loop;
    private Readings _readings = new Readings();
    private readonly Outputs _outputs = new Outputs();
    private readonly Outputs _off = new Outputs();
    private int _toldMicroseconds;
    private bool _hasSent;
    private int _elapsedMicroseconds;

    /// <summary>Builds the board and drives every real output off.</summary>
    /// <param name="exchange">The exchange, just begun.</param>
    /// <param name="link">The link over which it goes.</param>
    /// <param name="realOutputs">The outputs of the board itself.</param>
    /// <param name="settings">Settings of the controller.</param>
    public ExchangeBoard(ExchangePort exchange, LinkPort link, OutputPanel realOutputs, Settings settings)
    {
        _exchange = exchange;
        _link = link;
        _realOutputs = realOutputs;
        _loop = new ControlLoop(this, settings);
        link.Serve(_loop.Controller);
    }

    /// <summary>One period of the board, and of the control loop where one is due.</summary>
    /// <param name="elapsedMicroseconds">Time since the last period of the board.</param>
    public void Step(int elapsedMicroseconds)
    {
        _elapsedMicroseconds = elapsedMicroseconds;
        _link.Receive();
        _exchange.Wait(elapsedMicroseconds);
        _hasSent = false;
        if (_exchange.IsOn && _exchange.TakeTick())
        {
            _toldMicroseconds = unchecked(_toldMicroseconds + _exchange.ToldMicroseconds(elapsedMicroseconds));
            _loop.Step();
        }

        if (!_hasSent) Write(_loop.Outputs);
    }

    /// <inheritdoc/>
    public int MicrosecondCounter() => _toldMicroseconds;

    /// <inheritdoc/>
    public bool TryRead(Readings readings)
    {
        _exchange.Show(readings);
        _link.Buttons.AddTo(readings);
        _readings = readings;
        return !readings.Stale;
    }

    /// <inheritdoc/>
    public void Write(Outputs outputs)
    {
        _hasSent = true;
        _realOutputs.Write(_off);
        _link.Send(_elapsedMicroseconds, _readings, outputs);
    }
}
