namespace StarterCtl.Firmware;

/// <summary>Undoes <see cref="Cobs"/>, byte by byte as they come from the line.</summary>
public sealed class CobsDecoder
{
    private readonly byte[] _bytes;
    private int _blockLeft;
    private bool _owesZero;

    /// <summary>How many bytes of the frame have been decoded.</summary>
    public int Count;

    /// <summary>True once the frame had more bytes than there is room for.</summary>
    public bool IsOverlong;

    /// <summary>Builds a decoder at the start of a frame.</summary>
    /// <param name="bytes">Receives the decoded bytes.</param>
    public CobsDecoder(byte[] bytes)
    {
        _bytes = bytes;
    }

    /// <summary>True where a frame may end: no byte of the present block is missing.</summary>
    public bool IsWhole => _blockLeft == 0;

    /// <summary>Takes one byte from the line, 1 to 255; it adds one decoded byte at most.</summary>
    public void Take(int stuffed)
    {
        if (_blockLeft > 0)
        {
            _blockLeft--;
            Add(stuffed);
            return;
        }

        if (_owesZero) Add(0);
        _blockLeft = stuffed - 1;
        _owesZero = stuffed != Cobs.FullBlock;
    }

    /// <summary>Goes to the start of the next frame.</summary>
    public void Restart()
    {
        Count = 0;
        IsOverlong = false;
        _blockLeft = 0;
        _owesZero = false;
    }

    private void Add(int decoded)
    {
        if (Count == _bytes.Length)
        {
            IsOverlong = true;
            return;
        }

        _bytes[Count] = (byte)decoded;
        Count++;
    }
}
