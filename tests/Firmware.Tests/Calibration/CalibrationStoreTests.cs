using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Memory;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>Offset and gain of the channels over a power loss, apart from the settings.</summary>
public sealed class CalibrationStoreTests
{
    private const CalibrationChannel Amps = CalibrationChannel.ArmatureAmps;
    private const int SettingsAt = 4096;

    private readonly MemoryChip _chip = new();

    [Fact]
    public void Blank_MeasuresByTheNominalValues()
    {
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(_chip, 0, channels);

        Assert.Equal((StoreState.Blank, true), (store.State, store.IsUsable));
        Assert.Equal((2048f, 0.5f, 2048f, 0.5f), Pairs(channels));
    }

    [Fact]
    public void Kept_AfterAReboot_IsInForceWithItsFormer()
    {
        Keep(2050f, 0.52f);
        Keep(2060f, 0.48f);

        Assert.Equal((StoreState.Sound, (2060f, 0.48f, 2050f, 0.52f)), Reboot());
    }

    [Fact]
    public void Undo_TwiceIsNoUndo()
    {
        Keep(2050f, 0.52f);
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(_chip, 0, channels);

        Assert.True(store.TryUndo(Amps));
        Assert.Equal((2048f, 0.5f, 2050f, 0.52f), Pairs(channels));
        Assert.Equal((StoreState.Sound, (2048f, 0.5f, 2050f, 0.52f)), Reboot());
        Assert.True(store.TryUndo(Amps));
        Assert.Equal((StoreState.Sound, (2050f, 0.52f, 2048f, 0.5f)), Reboot());
    }

    [Fact]
    public void Upload_OfSettings_TouchesNoByteOfIt()
    {
        Keep(2050f, 0.52f);
        byte[] before = [.. _chip.Bytes.Take(SettingsAt)];
        Settings settings = FakeBoard.Chk01();

        Assert.True(new SettingsStore(_chip, SettingsAt).TryKeep(settings, SettingsChecksum.Of(settings), 1));

        Assert.Equal(before, _chip.Bytes.Take(SettingsAt));
    }

    [Fact]
    public void PowerCut_AtEveryByteOfASave_LeavesTheOldOrTheNewPair()
    {
        bool isWhole = false;
        for (int cut = 0; !isWhole; cut++)
        {
            MemoryChip chip = new() { Torn = TornByte.Anything };
            Keep(chip, 2050f, 0.52f);
            chip.BytesToCut = cut;
            isWhole = chip.Survives(() => Keep(chip, 2060f, 0.48f));
            (StoreState state, (float Offset, float, float Former, float) pairs) = Reboot(chip);

            Assert.Equal(StoreState.Sound, state);
            Assert.Contains((pairs.Offset, pairs.Former), isWhole ? [(2060f, 2050f)] : new[] { (2050f, 2048f), (2060f, 2050f) });
        }
    }

    [Theory]
    [InlineData(2048f + 409.6f, 0.5f)]
    [InlineData(2048f - 409.6f, 0.5f)]
    [InlineData(2048f, 0.2499f)]
    [InlineData(2048f, 1.0001f)]
    [InlineData(2048f, -0.5f)]
    [InlineData(float.NaN, 0.5f)]
    [InlineData(2048f, float.NaN)]
    [InlineData(2048f, float.PositiveInfinity)]
    public void Pair_BeyondItsLimits_IsNeitherKeptNorBelieved(float offset, float gain)
    {
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(_chip, 0, channels);
        Assert.False(store.TryKeep(Amps, new ChannelCalibration { OffsetCounts = offset, UnitsPerCount = gain }));
        Assert.Equal(0, _chip.Writes);

        Keep(2050f, 0.52f);
        Forge(offset, gain);

        Assert.Equal((StoreState.Unsound, (2048f, 0.5f, 2048f, 0.5f)), Reboot());
        Assert.False(new CalibrationStore(_chip, 0, CalibrationBench.Channels()).IsUsable);
    }

    [Fact]
    public void RandomMemory_NeverPutsAnythingInForceThatIsNotAllowed()
    {
        Random random = new(3);
        for (int round = 0; round < 3000; round++)
        {
            if (round % 2 == 0) random.NextBytes(_chip.Bytes.AsSpan(0, 256));
            else Forge(BitConverter.Int32BitsToSingle(random.Next()), BitConverter.Int32BitsToSingle(random.Next()));
            CalibratedChannel[] channels = CalibrationBench.Channels();
            CalibrationStore store = new(_chip, 0, channels);

            Assert.True(CalibrationLimits.Allow(channels[(int)Amps], channels[(int)Amps].InForce));
            Assert.Equal(store.State is StoreState.Sound, store.IsUsable);
        }
    }

    [Fact]
    public void TryKeep_MemoryThatFails_ChangesNothing()
    {
        Keep(2050f, 0.52f);
        _chip.StuckAddress = TwoCopyStore.BytesNeeded(_chip, CalibrationStore.ContentBytes) / 2 + TwoCopyStore.HeadBytes;
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(_chip, 0, channels);

        Assert.False(store.TryKeep(Amps, new ChannelCalibration { OffsetCounts = 2060f, UnitsPerCount = 0.48f }));

        Assert.Equal((2050f, 0.52f, 2048f, 0.5f), Pairs(channels));
    }

    private static (float Offset, float Gain, float FormerOffset, float FormerGain) Pairs(CalibratedChannel[] channels)
    {
        CalibratedChannel channel = channels[(int)Amps];
        return (channel.InForce.OffsetCounts, channel.InForce.UnitsPerCount, channel.Former.OffsetCounts, channel.Former.UnitsPerCount);
    }

    private static void Keep(MemoryChip chip, float offset, float gain) =>
        Assert.True(new CalibrationStore(chip, 0, CalibrationBench.Channels()).TryKeep(Amps, new ChannelCalibration { OffsetCounts = offset, UnitsPerCount = gain }));

    private static (StoreState State, (float Offset, float Gain, float FormerOffset, float FormerGain) Pairs) Reboot(MemoryChip chip)
    {
        CalibratedChannel[] channels = CalibrationBench.Channels();
        CalibrationStore store = new(chip, 0, channels);
        return (store.State, Pairs(channels));
    }

    private void Keep(float offset, float gain) => Keep(_chip, offset, gain);

    private (StoreState State, (float Offset, float Gain, float FormerOffset, float FormerGain) Pairs) Reboot() => Reboot(_chip);

    // A whole copy whose content nobody would have saved.
    private void Forge(float offset, float gain)
    {
        TwoCopyStore store = new(_chip, 0, CalibrationStore.ContentBytes, CalibrationStore.Version);
        store.Content.PutFloat(16 * (int)Amps, offset);
        store.Content.PutFloat(16 * (int)Amps + 4, gain);
        store.Content.Length = CalibrationStore.ContentBytes;
        Assert.True(store.TrySave());
    }
}
