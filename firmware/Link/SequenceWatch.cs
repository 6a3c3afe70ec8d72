namespace StarterCtl.Firmware;

/// <summary>Counts the frames that a line has lost, by the sequence numbers of those that came.</summary>
public sealed class SequenceWatch
{
    private const int NoneYet = -1;

    private int _last = NoneYet;

    /// <summary>Sequence numbers left out since the beginning.</summary>
    public int LostFrames;

    /// <summary>Takes a frame's number, 0 to 255. The first is the beginning, and the same again is a repetition, not a loss.</summary>
    public void Take(int sequence)
    {
        if (_last != NoneYet && sequence != _last) LostFrames += (sequence - _last - 1) & 255;
        _last = sequence;
    }

    /// <summary>Begins anew with the next frame.</summary>
    public void Restart()
    {
        _last = NoneYet;
        LostFrames = 0;
    }
}
