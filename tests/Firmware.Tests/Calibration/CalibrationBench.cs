using StarterCtl.Firmware.Tests.Memory;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>
/// The analogue channels of a board and what keeps their calibration: 12 bits; supply 0.125 V, armature 0.5 A and tacho 0.1 rad/s
/// per count, the last two about 2048 counts; no field sensor. Every channel is noisy by a count.
/// </summary>
internal sealed class CalibrationBench
{
    internal const int FullScaleCounts = 4095;
    internal const int CalibrationAt = 1024;
    private const int SettingsAt = 2048;

    private readonly int[] _counts = new int[(int)CalibrationChannel.Count];
    private int _period;

    internal CalibrationBench(IBoard board, MemoryChip chip)
    {
        Store = new CalibrationStore(chip, CalibrationAt, AllChannels);
        ResetMemory resets = new(chip, 0, ResetCause.Watchdog);
        Lock = new StartLock(board, resets, Store);
        Port = new CalibrationPort(AllChannels, Store, new MemoryReport(new SettingsStore(chip, SettingsAt), Store, resets, Lock));
        for (int i = 0; i < _counts.Length; i++) _counts[i] = (int)AllChannels[i].Nominal.OffsetCounts + 10;
    }

    internal CalibratedChannel[] AllChannels { get; } = Channels();

    internal CalibrationStore Store { get; }

    internal StartLock Lock { get; }

    internal CalibrationPort Port { get; }

    /// <summary>What a channel shows from now on, give or take a count.</summary>
    internal void Show(CalibrationChannel channel, int counts) => _counts[(int)channel] = counts;

    internal CalibratedChannel this[CalibrationChannel channel] => AllChannels[(int)channel];

    internal static CalibratedChannel[] Channels()
    {
        CalibratedChannel[] channels = new CalibratedChannel[(int)CalibrationChannel.Count];
        for (int i = 0; i < channels.Length; i++) channels[i] = new CalibratedChannel { Id = (CalibrationChannel)i };
        Fit(channels[(int)CalibrationChannel.SupplyVolts], 0f, 0.125f);
        Fit(channels[(int)CalibrationChannel.ArmatureAmps], 2048f, 0.5f);
        Fit(channels[(int)CalibrationChannel.TachoSpeed], 2048f, 0.1f);
        return channels;
    }

    /// <summary>Writes the counts of the next control period.</summary>
    internal void Next()
    {
        _period++;
        for (int i = 0; i < _counts.Length; i++) AllChannels[i].Counts = _counts[i] + _period % 3 - 1;
    }

    private static void Fit(CalibratedChannel channel, float offsetCounts, float unitsPerCount)
    {
        channel.FullScaleCounts = FullScaleCounts;
        channel.Nominal.OffsetCounts = offsetCounts;
        channel.Nominal.UnitsPerCount = unitsPerCount;
    }
}
