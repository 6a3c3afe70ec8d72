namespace StarterCtl.Firmware;

/// <summary>Finds frames in what comes from a line, and counts what was none. Never throws; rubbish costs the frames that it hit.</summary>
public sealed class FrameReader
{
    private readonly CobsDecoder _decoder;
    private int _check = Crc16.Start;
    private bool _isEmpty = true;

    /// <summary>The frame that was read last.</summary>
    public readonly Frame Frame = new Frame();

    /// <summary>Frames whose check was wrong.</summary>
    public int WrongChecks;

    /// <summary>Frames that were longer than any may be.</summary>
    public int OverlongFrames;

    /// <summary>Frames that were cut off or too short to be one.</summary>
    public int BrokenFrames;

    /// <summary>Builds a reader that takes its first byte for the start of a frame.</summary>
    public FrameReader()
    {
        _decoder = new CobsDecoder(Frame.Bytes);
    }

    /// <summary>Takes one byte from the line.</summary>
    /// <returns>True if it ended a sound frame, which stands in <see cref="Frame"/> until the next byte.</returns>
    public bool Take(int next)
    {
        if (next != 0)
        {
            _isEmpty = false;
            int known = _decoder.Count;
            _decoder.Take(next);
            if (_decoder.Count != known) _check = Crc16.Add(_check, Frame.Bytes[known]);
            return false;
        }

        bool isSound = !_isEmpty && IsSound();
        _isEmpty = true;
        _check = Crc16.Start;
        _decoder.Restart();
        return isSound;
    }

    private bool IsSound()
    {
        if (_decoder.IsOverlong)
        {
            OverlongFrames++;
            return false;
        }

        if (!_decoder.IsWhole || _decoder.Count < Frame.HeadBytes + Frame.CheckBytes)
        {
            BrokenFrames++;
            return false;
        }

        if (_check != 0)
        {
            WrongChecks++;
            return false;
        }

        Frame.BodyLength = _decoder.Count - Frame.HeadBytes - Frame.CheckBytes;
        return true;
    }
}
