using System;
using System.Linq;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>The controller's settings over a power loss: the old set, the new set, or none and said so.</summary>
public sealed class SettingsStoreTests
{
    private const int CaseHash = 0x0A0B0C0D;

    private readonly MemoryChip _chip = new();
    private int _refused;

    [Fact]
    public void Kept_AfterAReboot_IsEveryValueThatWasGiven()
    {
        Settings settings = BootCourse.Settings();
        int checksum = SettingsChecksum.Of(settings);
        Assert.True(new SettingsStore(_chip, 0).TryKeep(settings, checksum, CaseHash));

        SettingsStore store = new(_chip, 0);

        Assert.Equal((StoreState.Sound, checksum, CaseHash), (store.State, store.Checksum, store.CaseHash));
        Assert.Equal(checksum, SettingsChecksum.Of(store.Kept));
        Assert.Equal(Phase.Ready, PhaseOn(store));
    }

    [Fact]
    public void LargestSet_FitsItsPlace()
    {
        Settings settings = FakeBoard.Chk01(set =>
        {
            set.StageCount = Settings.MostStages;
            for (int i = 0; i <= Settings.MostStages; i++) set.StageOhms[i] = 17f - i;
            for (int i = 0; i < Settings.MostStages; i++) set.VoltsLeft[i] = 170f - i;
            set.CurvePoints = Settings.MostCurvePoints;
            for (int i = 0; i < Settings.MostCurvePoints; i++)
            {
                set.CurveAmps[i] = i;
                set.CurveConstants[i] = 1f + i;
            }
        });

        Assert.True(new SettingsStore(_chip, 0).TryKeep(settings, SettingsChecksum.Of(settings), CaseHash));
        Assert.Equal(StoreState.Sound, new SettingsStore(_chip, 0).State);
        // Case hash, checksum, 64 single values, 17 + 16 of the stages and 2 x 12 of the curve.
        Assert.Equal(8 + 4 * (64 + 17 + 16 + 24), SettingsStore.MostBytes);
    }

    [Fact]
    public void TryKeep_WhileAControllerRuns_LeavesItsSetAlone()
    {
        SettingsStore store = Keeping(2.5f);
        Settings running = store.Kept;
        Settings next = FakeBoard.Chk01(set => set.MachineConstant = 2.6f);

        Assert.True(store.TryKeep(next, SettingsChecksum.Of(next), CaseHash));
        next.MachineConstant = 9f;

        Assert.Equal((2.5f, 2.6f), (running.MachineConstant, store.Kept.MachineConstant));
    }

    [Theory]
    [InlineData(TornByte.Old)]
    [InlineData(TornByte.New)]
    [InlineData(TornByte.Anything)]
    public void PowerCut_AtEveryByteOfTheUpload_LeavesTheOldOrTheNewSet(TornByte torn)
    {
        for (int history = 0; history <= 2; history++)
        {
            bool isWhole = false;
            for (int cut = 0; !isWhole; cut++)
            {
                MemoryChip chip = new() { Torn = torn };
                for (int i = 1; i <= history; i++) Keep(chip, i);
                chip.BytesToCut = cut;
                isWhole = chip.Survives(() => Keep(chip, 100));
                AssertIsOneOf(chip, history, 100, isWhole);
            }
        }
    }

    [Fact]
    public void NoSettings_AfterAFirstPowerUp_ControllerIsNotSetUpAndSaysSo()
    {
        SettingsStore store = new(_chip, 0);

        Assert.Equal(StoreState.Blank, store.State);
        Assert.Equal(Phase.NotSetUp, PhaseOn(store));
        Assert.Equal(FaultId.SettingsInvalid, new Controller(store.Kept).Fault.Id);
    }

    [Fact]
    public void Settings_OfAnotherVersion_AreRefused()
    {
        Save(SettingTable.Version + 1, _ => { });

        SettingsStore store = new(_chip, 0);

        Assert.Equal((StoreState.OtherVersion, Phase.NotSetUp), (store.State, PhaseOn(store)));
    }

    [Fact]
    public void Settings_WholeButUnsound_AreRefusedWhateverIsWrong()
    {
        Keeping(2.5f);
        StoredBytes good = new TwoCopyStore(_chip, 0, SettingsStore.MostBytes, SettingTable.Version).Content;
        byte[] bytes = [.. good.Bytes.Take(good.Length)];

        for (int i = 4; i < bytes.Length; i++)
        {
            byte[] spoilt = [.. bytes];
            spoilt[i] ^= 0x20;
            Save(SettingTable.Version, content => spoilt.CopyTo(content.Bytes, 0), spoilt.Length);
            AssertUnsoundOrTheSame();
        }

        // All but the lowest byte of the twenty truth values, which is the same truth at 33 as at 1.
        Assert.InRange(_refused, bytes.Length - 4 - 20, bytes.Length - 4);
        foreach (int length in new[] { 0, 7, 8, bytes.Length - 4, bytes.Length - 1, bytes.Length + 4 })
        {
            Save(SettingTable.Version, content => bytes.CopyTo(content.Bytes, 0), length);
            Assert.Equal(StoreState.Unsound, new SettingsStore(_chip, 0).State);
        }
    }

    [Fact]
    public void RandomContent_InAWholeCopy_IsRefusedUnlessItIsTheSameSet()
    {
        Random random = new(1);
        Keeping(2.5f);
        StoredBytes good = new TwoCopyStore(_chip, 0, SettingsStore.MostBytes, SettingTable.Version).Content;
        for (int round = 0; round < 3000; round++)
        {
            int length = random.Next(4) == 0 ? random.Next(SettingsStore.MostBytes + 1) : good.Length;
            Save(SettingTable.Version, content => Spoil(random, content, good.Bytes), length);
            AssertUnsoundOrTheSame();
        }

        Assert.InRange(_refused, 2500, 2999);
    }

    [Fact]
    public void RandomMemory_NeverGivesSettingsThatFailTheirCheck()
    {
        Random random = new(2);
        for (int round = 0; round < 3000; round++)
        {
            random.NextBytes(_chip.Bytes);
            // A head that looks right, so that what comes behind is looked at.
            _chip.Bytes[4] = SettingTable.Version;
            _chip.Bytes[5] = 0;
            _chip.Bytes[7] = (byte)random.Next(3);
            SettingsStore store = new(_chip, 0);
            Assert.NotEqual(StoreState.Sound, store.State);
            Assert.Equal(Phase.NotSetUp, PhaseOn(store));
        }
    }

    [Fact]
    public void TryKeep_SetThatFailsItsCheckOrItsChecksum_IsNotWritten()
    {
        SettingsStore store = Keeping(2.5f);
        int writes = _chip.Writes;
        Settings unsound = FakeBoard.Chk01(set => set.PeakAmps = 2000f);

        Assert.False(store.TryKeep(unsound, SettingsChecksum.Of(unsound), CaseHash));
        Assert.False(store.TryKeep(FakeBoard.Chk01(), 12345, CaseHash));

        Assert.Equal((writes, 2.5f, StoreState.Sound), (_chip.Writes, store.Kept.MachineConstant, store.State));
    }

    [Fact]
    public void TryKeep_MemoryThatFails_KeepsTheOldSet()
    {
        SettingsStore store = Keeping(2.5f);
        _chip.StuckAddress = TwoCopyStore.BytesNeeded(_chip, SettingsStore.MostBytes) / 2 + TwoCopyStore.HeadBytes + 12;
        Settings next = FakeBoard.Chk01(set => set.MachineConstant = 2.6f);

        Assert.False(store.TryKeep(next, SettingsChecksum.Of(next), CaseHash));

        Assert.Equal((2.5f, 2.5f), (store.Kept.MachineConstant, new SettingsStore(_chip, 0).Kept.MachineConstant));
    }

    [Fact]
    public void Upload_OverTheLink_IsKeptAsItWasSent()
    {
        Settings settings = FakeBoard.Chk01();
        SettingsUpload upload = new();
        SettingRow[] rows = SettingTable.Rows;
        int count = rows.Sum(row => SettingAccess.Count(settings, row.Id));
        upload.Begin(new UploadBegin { SettingsVersion = SettingTable.Version, ValueCount = count, Checksum = SettingsChecksum.Of(settings), CaseHash = CaseHash });
        foreach (SettingRow row in rows)
        {
            for (int i = 0; i < SettingAccess.Count(settings, row.Id); i++)
            {
                int bits = row.IsWhole ? SettingAccess.GetWhole(settings, row.Id) : SingleBits.Of(SettingAccess.Get(settings, row.Id, i));
                Assert.Equal(LinkReason.Done, upload.Take(new UploadValue { Setting = row.Id, Index = i, Bits = bits }));
            }
        }

        Assert.Equal(LinkReason.Done, upload.Commit(new SettingsStore(_chip, 0)));
        Assert.Equal(SettingsChecksum.Of(settings), new SettingsStore(_chip, 0).Checksum);
    }

    private static void Spoil(Random random, StoredBytes content, byte[] good)
    {
        if (random.Next(2) == 0) random.NextBytes(content.Bytes);
        else good.CopyTo(content.Bytes, 0);
        for (int i = random.Next(1, 6); i > 0; i--) content.Bytes[random.Next(content.Bytes.Length)] = (byte)random.Next(256);
    }

    private static void Keep(MemoryChip chip, int caseHash)
    {
        Settings settings = FakeBoard.Chk01(set => set.MachineConstant = 1f + caseHash);
        Assert.True(new SettingsStore(chip, 0).TryKeep(settings, SettingsChecksum.Of(settings), caseHash));
    }

    private static void AssertIsOneOf(MemoryChip chip, int old, int saved, bool isWhole)
    {
        SettingsStore store = new(chip, 0);
        Assert.Contains(store.CaseHash, isWhole ? [saved] : new[] { old, saved });
        bool isKept = store.CaseHash != 0;
        Assert.Equal((isKept, isKept ? 1f + store.CaseHash : 0f), (store.State == StoreState.Sound, store.Kept.MachineConstant));
    }

    private static Phase PhaseOn(SettingsStore store) => new Controller(store.Kept).Phase;

    private SettingsStore Keeping(float machineConstant)
    {
        SettingsStore store = new(_chip, 0);
        Settings settings = FakeBoard.Chk01(set => set.MachineConstant = machineConstant);
        Assert.True(store.TryKeep(settings, SettingsChecksum.Of(settings), CaseHash));
        return store;
    }

    private void Save(int version, Action<StoredBytes> fill, int length = 8)
    {
        TwoCopyStore store = new(_chip, 0, SettingsStore.MostBytes, version);
        fill(store.Content);
        store.Content.Length = length;
        Assert.True(store.TrySave());
    }

    private void AssertUnsoundOrTheSame()
    {
        SettingsStore store = new(_chip, 0);
        if (store.State == StoreState.Sound)
        {
            Assert.Equal(SettingsChecksum.Of(FakeBoard.Chk01()), SettingsChecksum.Of(store.Kept));
            return;
        }

        _refused++;
        SettingsCheck check = new();
        check.Run(store.Kept);
        Assert.Equal((StoreState.Unsound, false), (store.State, check.Count == 0));
    }
}
