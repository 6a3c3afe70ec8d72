using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>A set of settings arrives whole, sound and as it was sent, or not at all.</summary>
public sealed class SettingsUploadTests
{
    private readonly LinkRig _rig = new();
    private readonly AckAnswer _ack = new();

    public SettingsUploadTests()
    {
        _rig.Step();
    }

    [Fact]
    public void Commit_WholeSet_IsKeptValueByValue()
    {
        Settings sent = BootCourse.Settings();

        Assert.Equal(LinkReason.Done, Upload(sent));

        Assert.Equal((SettingsChecksum.Of(sent), 77), (_rig.Checksum, _rig.CaseHash));
        Assert.Equal(SettingsChecksum.Of(sent), SettingsChecksum.Of(_rig.Kept));
        Assert.Equal(Values(sent).Select(value => (value.Setting, value.Index, value.Bits)), ReadBack());
    }

    [Fact]
    public void Commit_SetWithoutACurve_IsKept()
    {
        Assert.Equal(LinkReason.Done, Upload(FakeBoard.Chk01(settings => settings.MachineConstant = 2.25f)));
        Assert.Equal(2.25f, _rig.Kept.MachineConstant);
    }

    [Fact]
    public void Begin_OtherVersionOfTheTable_IsRefused()
    {
        Assert.Equal(LinkReason.WrongVersion, Begin(FakeBoard.Chk01(), version: SettingTable.Version + 1));
        Assert.Equal(LinkReason.NoUpload, Put(new UploadValue { Setting = SettingId.StageCount, Bits = 3 }));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(69)]
    [InlineData(255)]
    public void Put_IdOfNoSetting_IsUnknown(int id)
    {
        Begin(FakeBoard.Chk01());

        Assert.Equal(LinkReason.UnknownSetting, Put(new UploadValue { Setting = (SettingId)id }));
    }

    [Fact]
    public void Put_NotTheNextOfTheTable_IsOutOfOrder()
    {
        Begin(FakeBoard.Chk01());

        Assert.Equal(LinkReason.OutOfOrder, Put(new UploadValue { Setting = SettingId.MachineConstant }));
        Assert.Equal(LinkReason.OutOfOrder, Put(new UploadValue { Setting = SettingId.StageCount, Index = 1, Bits = 3 }));
        Assert.Equal(LinkReason.Done, Put(new UploadValue { Setting = SettingId.StageCount, Bits = 3 }));
        Assert.Equal(LinkReason.OutOfOrder, Put(new UploadValue { Setting = SettingId.StageCount, Bits = 3 }));
    }

    [Fact]
    public void Put_MoreThanTheTableHas_IsOutOfOrder()
    {
        List<UploadValue> values = Values(FakeBoard.Chk01());
        Begin(FakeBoard.Chk01());
        foreach (UploadValue value in values) Put(value);

        Assert.Equal(LinkReason.OutOfOrder, Put(values[^1]));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    [InlineData(-1)]
    [InlineData(int.MaxValue)]
    public void Put_WholeNumberOutOfRange_IsRefusedByName(int stageCount)
    {
        Begin(FakeBoard.Chk01());

        Assert.Equal(LinkReason.OutOfRange, Put(new UploadValue { Setting = SettingId.StageCount, Bits = stageCount }));
        Assert.Equal(SettingId.StageCount, _ack.Setting);
    }

    [Theory]
    [InlineData(0f)]
    [InlineData(-1f)]
    [InlineData(1.1e6f)]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    public void Put_NumberOutOfRange_IsRefusedByName_AndTheRightOneMayFollow(float ohms)
    {
        Begin(FakeBoard.Chk01());
        Put(new UploadValue { Setting = SettingId.StageCount, Bits = 3 });

        Assert.Equal(LinkReason.OutOfRange, Put(new UploadValue { Setting = SettingId.StageOhms, Bits = BitConverter.SingleToInt32Bits(ohms) }));
        Assert.Equal(SettingId.StageOhms, _ack.Setting);
        Assert.Equal(LinkReason.Done, Put(new UploadValue { Setting = SettingId.StageOhms, Bits = BitConverter.SingleToInt32Bits(2f) }));
    }

    [Fact]
    public void Put_SameRequestAgain_CountsOnce()
    {
        Begin(FakeBoard.Chk01());
        foreach (UploadValue value in Values(FakeBoard.Chk01()))
        {
            Put(value);
            _rig.SendAgain();
        }

        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));
        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.SendAgain()));
    }

    [Fact]
    public void Commit_OneValueMissing_IsTruncated()
    {
        Settings before = _rig.Kept;
        List<UploadValue> values = Values(FakeBoard.Chk01());
        Begin(FakeBoard.Chk01());
        foreach (UploadValue value in values.SkipLast(1)) Put(value);

        Assert.Equal(LinkReason.Truncated, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));
        Assert.Same(before, _rig.Kept);
    }

    [Fact]
    public void Commit_OtherCountThanAnnounced_IsTruncated() =>
        Assert.Equal(LinkReason.Truncated, Upload(FakeBoard.Chk01(), countAdded: 1));

    [Fact]
    public void Commit_HalfATableAnnouncedAndSent_IsTruncated()
    {
        List<UploadValue> half = Values(FakeBoard.Chk01())[..20];
        Fnv sum = new();
        sum.Add(SettingTable.Version);
        foreach (UploadValue value in half) sum.Add(value.Bits);
        new UploadBegin { SettingsVersion = SettingTable.Version, ValueCount = 20, Checksum = sum.Sum }.Write(_rig.Request);
        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask()));
        foreach (UploadValue value in half) Assert.Equal(LinkReason.Done, Put(value));

        Assert.Equal(LinkReason.Truncated, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));
    }

    [Fact]
    public void Commit_OtherChecksumThanAnnounced_IsRefused()
    {
        Settings before = _rig.Kept;

        Assert.Equal(LinkReason.ChecksumMismatch, Upload(FakeBoard.Chk01(), checksumAdded: 1));
        Assert.Same(before, _rig.Kept);
    }

    [Fact]
    public void Commit_SettingThatContradictsAnother_IsRefusedByName()
    {
        Assert.Equal(LinkReason.Contradiction, Upload(FakeBoard.Chk01(settings => settings.PeakAmps = 1000f)));
        Assert.Equal((SettingId.PeakAmps, SettingProblem.NotBelowOther), (_ack.Setting, _ack.Problem));
    }

    [Fact]
    public void Commit_BoardCannotKeep_SaysSo()
    {
        _rig.KeepFails = true;

        Assert.Equal(LinkReason.NotStored, Upload(FakeBoard.Chk01()));
    }

    [Fact]
    public void Commit_WithoutBegin_IsNoUpload() => Assert.Equal(LinkReason.NoUpload, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));

    [Fact]
    public void Commit_Refused_EndsTheUpload()
    {
        Upload(FakeBoard.Chk01(), checksumAdded: 1);

        Assert.Equal(LinkReason.NoUpload, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));
    }

    [Fact]
    public void Upload_WhileRunning_IsRefused()
    {
        Start();

        Assert.Equal(LinkReason.NotWhileRunning, Begin(FakeBoard.Chk01()));
    }

    [Fact]
    public void Upload_StartedInBetween_IsDropped()
    {
        Settings before = _rig.Kept;
        Begin(FakeBoard.Chk01());
        foreach (UploadValue value in Values(FakeBoard.Chk01())) Put(value);
        Start();

        Assert.Equal(LinkReason.NotWhileRunning, _rig.Reason(_rig.Ask(MessageId.CommitUpload)));
        Assert.Same(before, _rig.Kept);
        Assert.Equal(LinkReason.NoUpload, Put(Values(FakeBoard.Chk01())[0]));
    }

    [Fact]
    public void Upload_WhileTripped_IsRefused_AsItWouldForgetTheFault()
    {
        _rig.ReadFails = true;
        _rig.Step();
        _rig.ReadFails = false;

        Assert.Equal(LinkReason.NotWhileRunning, Begin(FakeBoard.Chk01()));
        Assert.Equal(FaultId.ReadingInvalid, _rig.Controller.Fault.Id);
    }

    [Fact]
    public void Upload_ToAControllerThatIsNotSetUp_IsKept()
    {
        LinkRig rig = new(settings => settings.InstantTripAmps = float.NaN);
        rig.Step();
        Assert.Equal(Phase.NotSetUp, rig.Controller.Phase);

        BeginMessage(FakeBoard.Chk01(), SettingTable.Version, 0, 0).Write(rig.Request);

        Assert.Equal(LinkReason.Done, rig.Reason(rig.Ask()));
    }

    [Theory]
    [InlineData(0, 0, LinkReason.UnknownSetting)]
    [InlineData(69, 0, LinkReason.UnknownSetting)]
    [InlineData((int)SettingId.StageOhms, 4, LinkReason.OutOfOrder)]
    [InlineData((int)SettingId.MachineConstant, 1, LinkReason.OutOfOrder)]
    [InlineData((int)SettingId.CurveAmps, 0, LinkReason.OutOfOrder)]
    public void ReadSetting_NoSuchValue_IsRefused(int id, int index, LinkReason reason)
    {
        new SettingRequest { Setting = (SettingId)id, Index = index }.Write(_rig.Request);

        Assert.Equal(reason, _rig.Reason(_rig.Ask()));
    }

    private LinkReason Upload(Settings settings, int countAdded = 0, int checksumAdded = 0)
    {
        Assert.Equal(LinkReason.Done, Begin(settings, countAdded: countAdded, checksumAdded: checksumAdded));
        foreach (UploadValue value in Values(settings)) Assert.Equal(LinkReason.Done, Put(value));
        LinkReason reason = _rig.Reason(_rig.Ask(MessageId.CommitUpload));
        _ack.Read(_rig.Answer);
        return reason;
    }

    private LinkReason Begin(Settings settings, int version = SettingTable.Version, int countAdded = 0, int checksumAdded = 0)
    {
        BeginMessage(settings, version, countAdded, checksumAdded).Write(_rig.Request);
        return _rig.Reason(_rig.Ask());
    }

    private static UploadBegin BeginMessage(Settings settings, int version, int countAdded, int checksumAdded) => new()
    {
        SettingsVersion = version,
        ValueCount = Values(settings).Count + countAdded,
        Checksum = SettingsChecksum.Of(settings) + checksumAdded,
        CaseHash = 77,
    };

    private LinkReason Put(UploadValue value)
    {
        value.Write(_rig.Request);
        LinkReason reason = _rig.Reason(_rig.Ask());
        _ack.Read(_rig.Answer);
        return reason;
    }

    private void Start()
    {
        _rig.Port.Buttons.PressStart();
        _rig.Step(5);
        Assert.True(_rig.CloseLine);
    }

    private static List<UploadValue> Values(Settings settings)
    {
        List<UploadValue> values = [];
        foreach (SettingRow row in SettingTable.Rows)
        {
            for (int i = 0; i < SettingAccess.Count(settings, row.Id); i++) values.Add(Value(settings, row, i));
        }

        return values;
    }

    private static UploadValue Value(Settings settings, SettingRow row, int index) => new()
    {
        Setting = row.Id,
        Index = index,
        Bits = row.IsWhole ? SettingAccess.GetWhole(settings, row.Id) : BitConverter.SingleToInt32Bits(SettingAccess.Get(settings, row.Id, index)),
    };

    private List<(SettingId, int, int)> ReadBack()
    {
        List<(SettingId, int, int)> read = [];
        SettingAnswer answer = new();
        foreach (SettingRow row in SettingTable.Rows)
        {
            int count = SettingAccess.Count(_rig.Kept, row.Id);
            for (int i = 0; i < count; i++)
            {
                new SettingRequest { Setting = row.Id, Index = i }.Write(_rig.Request);
                answer.Read(_rig.Ask());
                Assert.Equal(count, answer.Count);
                read.Add((answer.Setting, answer.Index, answer.Bits));
            }
        }

        return read;
    }
}
