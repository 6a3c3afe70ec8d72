namespace StarterCtl.Firmware;

/// <summary>
/// Keeps offset and gain of the analogue channels over a power loss, each with the pair that was in force before it. In a place of
/// its own: an upload of settings never touches it. A board that was never calibrated measures by its nominal values; one that
/// was, and cannot read it back, does so too, but must not start (<see cref="IsUsable"/>).
/// </summary>
public sealed class CalibrationStore
{
    /// <summary>Version of the content.</summary>
    public const int Version = 1;

    /// <summary>Length of the content, bytes.</summary>
    public const int ContentBytes = (int)CalibrationChannel.Count * ChannelBytes;

    private const int ChannelBytes = 16;
    private const int FormerAt = 8;

    private readonly TwoCopyStore _store;
    private readonly CalibratedChannel[] _channels;

    /// <summary>Reads what was kept, and puts it in force.</summary>
    /// <param name="memory">The memory.</param>
    /// <param name="address">First byte of its place, which begins a page.</param>
    /// <param name="channels">One for each <see cref="CalibrationChannel"/>.</param>
    public CalibrationStore(INonVolatile memory, int address, CalibratedChannel[] channels)
    {
        _channels = channels;
        _store = new TwoCopyStore(memory, address, ContentBytes, Version);
        State = _store.State;
        if (State == StoreState.Sound && !TryAdopt()) State = StoreState.Unsound;
        if (State == StoreState.Sound) return;
        for (int i = 0; i < channels.Length; i++)
        {
            Copy(channels[i].Nominal, channels[i].InForce);
            Copy(channels[i].Nominal, channels[i].Former);
        }
    }

    /// <summary>What was found.</summary>
    public StoreState State { get; private set; }

    /// <summary>False where there was a calibration that cannot be read back.</summary>
    public bool IsUsable => State == StoreState.Sound || State == StoreState.Blank;

    /// <summary>Keeps a pair for a channel, reads it back, and puts it in force; the one in force before becomes the former.</summary>
    /// <returns>False if it passes the limits of its channel, or could not be kept: then nothing has changed.</returns>
    public bool TryKeep(CalibrationChannel channel, ChannelCalibration pair)
    {
        if (!CalibrationLimits.Allow(_channels[(int)channel], pair)) return false;
        int at = WriteContent(channel);
        WritePair(at, pair);
        WritePair(at + FormerAt, _channels[(int)channel].InForce);
        if (!_store.TrySave()) return false;
        State = StoreState.Sound;
        return TryAdopt();
    }

    /// <summary>Puts the former pair of a channel in force again; the present one becomes the former.</summary>
    /// <returns>False if it could not be kept.</returns>
    public bool TryUndo(CalibrationChannel channel) => TryKeep(channel, _channels[(int)channel].Former);

    private static void Copy(ChannelCalibration from, ChannelCalibration to)
    {
        to.OffsetCounts = from.OffsetCounts;
        to.UnitsPerCount = from.UnitsPerCount;
    }

    // Every channel as it is; returns where the one stands that is to be changed.
    private int WriteContent(CalibrationChannel channel)
    {
        for (int i = 0; i < _channels.Length; i++)
        {
            WritePair(i * ChannelBytes, _channels[i].InForce);
            WritePair(i * ChannelBytes + FormerAt, _channels[i].Former);
        }

        _store.Content.Length = ContentBytes;
        return (int)channel * ChannelBytes;
    }

    private void WritePair(int at, ChannelCalibration pair)
    {
        _store.Content.PutFloat(at, pair.OffsetCounts);
        _store.Content.PutFloat(at + 4, pair.UnitsPerCount);
    }

    private bool TryAdopt()
    {
        if (_store.Content.Length != ContentBytes) return false;
        bool isSound = true;
        for (int i = 0; i < _channels.Length; i++)
        {
            CalibratedChannel channel = _channels[i];
            ReadPair(i * ChannelBytes, channel.InForce);
            ReadPair(i * ChannelBytes + FormerAt, channel.Former);
            isSound &= !channel.IsFitted || (CalibrationLimits.Allow(channel, channel.InForce) && CalibrationLimits.Allow(channel, channel.Former));
        }

        return isSound;
    }

    private void ReadPair(int at, ChannelCalibration pair)
    {
        pair.OffsetCounts = _store.Content.GetFloat(at);
        pair.UnitsPerCount = _store.Content.GetFloat(at + 4);
    }
}
