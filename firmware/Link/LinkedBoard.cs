using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>A board with a serial link at its side: adds the link's presses to what is read, and tells the link what was commanded.</summary>
public sealed class LinkedBoard : IBoard
{
    private readonly IBoard _board;
    private readonly LinkPort _link;
    private Readings _readings = new Readings();
    private int _counterMicroseconds;
    private int _sentMicroseconds;

    /// <summary>Puts a link beside a board.</summary>
    public LinkedBoard(IBoard board, LinkPort link)
    {
        _board = board;
        _link = link;
    }

    /// <inheritdoc/>
    public int MicrosecondCounter()
    {
        _counterMicroseconds = _board.MicrosecondCounter();
        return _counterMicroseconds;
    }

    /// <inheritdoc/>
    public bool TryRead(Readings readings)
    {
        bool isRead = _board.TryRead(readings);
        _link.Receive();
        if (!isRead)
        {
            _link.Buttons.Release();
            return false;
        }

        _link.Buttons.AddTo(readings);
        _readings = readings;
        return true;
    }

    /// <inheritdoc/>
    public void Write(Outputs outputs)
    {
        _board.Write(outputs);
        _link.Send(unchecked(_counterMicroseconds - _sentMicroseconds), _readings, outputs);
        _sentMicroseconds = _counterMicroseconds;
    }
}
