using System;
using System.Linq;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>Two copies of a few bytes, on a memory whose power may go at any byte.</summary>
public sealed class TwoCopyStoreTests
{
    private const int Version = 7;
    private const int MostBytes = 8;
    // Head 8, content 8, checksum 4.
    private const int CopyBytes = 20;

    public static TheoryData<int, TornByte> PagesAndTears
    {
        get
        {
            TheoryData<int, TornByte> rows = [];
            foreach (int page in new[] { 1, 16, 64 })
            {
                foreach (TornByte torn in Enum.GetValues<TornByte>()) rows.Add(page, torn);
            }

            return rows;
        }
    }

    [Theory]
    [InlineData(1, 40)]
    [InlineData(16, 64)]
    [InlineData(64, 128)]
    public void Saves_OfAnyNumber_TheLastIsThereAfterAReboot(int page, int bytes)
    {
        MemoryChip chip = new(256, page);
        Assert.Equal(bytes, TwoCopyStore.BytesNeeded(chip, MostBytes));
        for (int number = 1; number <= 5; number++)
        {
            Assert.True(TrySave(chip, number));
            Assert.Equal((StoreState.Sound, number), Reboot(chip));
        }
    }

    [Theory]
    [MemberData(nameof(PagesAndTears))]
    public void PowerCut_AtEveryByteOfASaveAndOfTheNext_LeavesOldOrNew(int page, TornByte torn)
    {
        for (int history = 0; history <= 3; history++)
        {
            for (int cut = 0; ; cut++)
            {
                MemoryChip chip = WithHistory(page, history);
                chip.Torn = torn;
                chip.BytesToCut = cut;
                bool isWhole = chip.Survives(() => TrySave(chip, 100));
                int kept = AssertOldOrNew(chip, history, 100);
                if (isWhole)
                {
                    Assert.Equal(100, kept);
                    break;
                }

                CutTheNextSave(chip, kept);
            }
        }
    }

    [Fact]
    public void Memory_NeverWritten_IsBlank() => Assert.Equal((StoreState.Blank, 0), Reboot(new MemoryChip(256)));

    [Fact]
    public void Memory_FullOfZeros_IsLost()
    {
        MemoryChip chip = new(256);
        Array.Clear(chip.Bytes);

        Assert.Equal((StoreState.Lost, 0), Reboot(chip));
    }

    [Theory]
    [InlineData(0, 127, 64)]
    [InlineData(64, 191, 64)]
    [InlineData(1, 256, 64)]
    [InlineData(-64, 256, 64)]
    [InlineData(0, 256, 0)]
    public void Place_ThatIsNoPlace_IsRefusedAndNeverWritten(int address, int size, int page)
    {
        MemoryChip chip = new(size, page);
        TwoCopyStore store = new(chip, address, MostBytes, Version);

        Assert.Equal(StoreState.NoRoom, store.State);
        Assert.False(store.TrySave());
        Assert.Equal(0, chip.Writes);
    }

    [Fact]
    public void NewestCopy_OfAnotherVersion_IsRefusedAndTheOlderOneDoesNotComeBack()
    {
        MemoryChip chip = WithHistory(64, 2);
        Assert.True(TrySave(chip, 3, Version + 1));

        Assert.Equal(StoreState.OtherVersion, Reboot(chip).State);
        Assert.True(TrySave(chip, 4));
        Assert.Equal((StoreState.Sound, 4), Reboot(chip));
    }

    [Fact]
    public void SequenceNumber_BehindTheLargest_GoesOn()
    {
        MemoryChip chip = new(256);
        WriteCopy(chip, 0, int.MaxValue, 1);
        Assert.Equal((StoreState.Sound, 1), Reboot(chip));

        Assert.True(TrySave(chip, 2));
        Assert.Equal((StoreState.Sound, 2), Reboot(chip));
        Assert.True(TrySave(chip, 3));
        Assert.Equal((StoreState.Sound, 3), Reboot(chip));
    }

    [Fact]
    public void Memory_ThatDoesNotGiveBackWhatWasWritten_KeepsTheOld()
    {
        for (int stuck = 64; stuck < 64 + CopyBytes; stuck++)
        {
            MemoryChip chip = WithHistory(64, 1);
            chip.StuckAddress = stuck;
            bool isSaved = TrySave(chip, 0x10101010);

            Assert.Equal((StoreState.Sound, isSaved ? 0x10101010 : 1), Reboot(chip));
            // The content is even, so a bit that is always set shows in every byte of it.
            if (stuck is >= 64 + TwoCopyStore.HeadBytes and < 64 + TwoCopyStore.HeadBytes + MostBytes) Assert.False(isSaved);
        }
    }

    [Fact]
    public void Content_LongerThanItsPlace_IsNotSaved()
    {
        MemoryChip chip = WithHistory(64, 1);
        TwoCopyStore store = new(chip, 0, MostBytes, Version);
        store.Content.Length = MostBytes + 1;

        Assert.False(store.TrySave());
        Assert.Equal((StoreState.Sound, 1), Reboot(chip));
    }

    [Fact]
    public void AnyByte_OfTheOnlyCopyChanged_IsLost()
    {
        for (int address = 0; address < CopyBytes; address++)
        {
            MemoryChip chip = WithHistory(64, 1);
            chip.Bytes[address] ^= 0x40;

            Assert.Equal(StoreState.Lost, Reboot(chip).State);
        }
    }

    private static MemoryChip WithHistory(int page, int saves)
    {
        MemoryChip chip = new(256, page);
        for (int number = 1; number <= saves; number++) TrySave(chip, number);
        return chip;
    }

    private static bool TrySave(MemoryChip chip, int number, int version = Version)
    {
        TwoCopyStore store = new(chip, 0, MostBytes, version);
        store.Content.Length = MostBytes;
        store.Content.PutInt(0, number);
        store.Content.PutInt(4, number);
        return store.TrySave();
    }

    private static (StoreState State, int Number) Reboot(MemoryChip chip)
    {
        TwoCopyStore store = new(chip, 0, MostBytes, Version);
        if (store.State != StoreState.Sound) return (store.State, 0);
        Assert.Equal((MostBytes, store.Content.GetInt(0)), (store.Content.Length, store.Content.GetInt(4)));
        return (store.State, store.Content.GetInt(0));
    }

    // What is kept after a reboot: the old or the new; 0 for nothing, where nothing was kept before.
    private static int AssertOldOrNew(MemoryChip chip, int old, int saved)
    {
        (StoreState state, int number) = Reboot(chip);
        Assert.Contains(number, new[] { old, saved });
        Assert.True(state == StoreState.Sound || number == 0, $"{state}");
        return number;
    }

    private static void CutTheNextSave(MemoryChip chip, int kept)
    {
        byte[] before = [.. chip.Bytes];
        for (int cut = 0; ; cut++)
        {
            before.CopyTo(chip.Bytes, 0);
            chip.BytesToCut = cut;
            bool isWhole = chip.Survives(() => TrySave(chip, 200));
            int now = AssertOldOrNew(chip, kept, 200);
            if (!isWhole) continue;
            Assert.Equal(200, now);
            return;
        }
    }

    private static void WriteCopy(MemoryChip chip, int address, int sequence, int number)
    {
        StoredBytes copy = new(CopyBytes);
        copy.PutInt(0, sequence);
        copy.PutInt(4, Version | (MostBytes << 16));
        copy.PutInt(8, number);
        copy.PutInt(12, number);
        Fnv sum = new();
        foreach (byte next in copy.Bytes.Take(CopyBytes - TwoCopyStore.CheckBytes)) sum.Add(next);
        copy.PutInt(16, sum.Sum);
        copy.Bytes.CopyTo(chip.Bytes, address);
    }
}
