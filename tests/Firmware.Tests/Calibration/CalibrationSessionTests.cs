using StarterCtl.Firmware.Tests.Memory;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>
/// Two points of the armature channel: nominal 2048 counts and 0.5 A per count of 4095. All limits: common practice, no source.
/// </summary>
public sealed class CalibrationSessionTests
{
    private const CalibrationChannel Amps = CalibrationChannel.ArmatureAmps;

    private readonly MemoryChip _chip = new();
    private readonly CalibratedChannel[] _channels = CalibrationBench.Channels();
    private readonly CalibrationStore _store;
    private readonly CalibrationSession _session;

    public CalibrationSessionTests()
    {
        _store = new CalibrationStore(_chip, 0, _channels);
        _session = new CalibrationSession(_channels, _store);
    }

    private CalibratedChannel Channel => _channels[(int)Amps];

    [Fact]
    public void TwoPoints_SavedAndReadBack_AreInForce()
    {
        Assert.Equal(CalibrationReason.Done, _session.Begin(Amps));
        Assert.Equal(CalibrationReason.Done, TakeZero(2050));
        Assert.Equal((CalibrationState.ZeroTaken, 2050f), (_session.State, _session.New.OffsetCounts));
        Assert.Equal(CalibrationReason.Done, TakeSpan(2550, 240f));
        // 240 A over 500 counts.
        Assert.Equal((CalibrationState.Complete, 0.48f, 2550f), (_session.State, _session.New.UnitsPerCount, _session.MeanCounts));
        Assert.Equal(0.5f, Channel.InForce.UnitsPerCount);

        Assert.Equal(CalibrationReason.Done, _session.Save(isAtRest: true));

        Assert.Equal((2050f, 0.48f, 2048f, 0.5f), (Channel.InForce.OffsetCounts, Channel.InForce.UnitsPerCount, Channel.Former.OffsetCounts, Channel.Former.UnitsPerCount));
        Assert.Equal(240f, Channel.InForce.ToUnits(2550f), 1e-4f);
        Assert.Equal(CalibrationState.Idle, _session.State);
        CalibratedChannel[] rebooted = CalibrationBench.Channels();
        _ = new CalibrationStore(_chip, 0, rebooted);
        Assert.Equal((2050f, 0.48f), (rebooted[(int)Amps].InForce.OffsetCounts, rebooted[(int)Amps].InForce.UnitsPerCount));
    }

    [Fact]
    public void Zero_IsTheMeanOf256Samples()
    {
        _session.Begin(Amps);
        _session.TakeZero(isAtRest: true);

        for (int i = 0; i < 256; i++)
        {
            Assert.Equal(CalibrationState.TakingZero, _session.State);
            // A quarter of the samples is higher by three counts.
            Step(i % 4 == 0 ? 2053 : 2050);
        }

        Assert.Equal((CalibrationState.ZeroTaken, 2050.75f, 3), (_session.State, _session.New.OffsetCounts, _session.SpreadCounts));
    }

    [Fact]
    public void SpanBelowZero_WithANegativeTrueValue_IsAsGood()
    {
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(CalibrationReason.Done, TakeSpan(1548, -250f));

        Assert.Equal(0.5f, _session.New.UnitsPerCount);
    }

    [Fact]
    public void Steps_WithoutABegin_AreRefused()
    {
        Assert.Equal(CalibrationReason.NotBegun, _session.TakeZero(isAtRest: true));
        Assert.Equal(CalibrationReason.NotBegun, _session.TakeSpan(1f));
        Assert.Equal(CalibrationReason.NotBegun, _session.Save(isAtRest: true));
    }

    [Fact]
    public void Steps_OutOfTheirOrder_AreRefused()
    {
        _session.Begin(Amps);
        Assert.Equal(CalibrationReason.NoZero, _session.TakeSpan(240f));
        Assert.Equal(CalibrationReason.NothingToSave, _session.Save(isAtRest: true));
        _session.TakeZero(isAtRest: true);

        Assert.Equal(CalibrationReason.Busy, _session.TakeZero(isAtRest: true));
        Assert.Equal(CalibrationReason.Busy, _session.TakeSpan(240f));
        Assert.Equal(CalibrationReason.Busy, _session.Save(isAtRest: true));
    }

    [Fact]
    public void Zero_NotAtRest_IsRefusedAtOnceAndAtAnySampleLater()
    {
        _session.Begin(Amps);
        Assert.Equal(CalibrationReason.NotAtRest, _session.TakeZero(isAtRest: false));
        for (int until = 0; until < 256; until += 51)
        {
            _session.TakeZero(isAtRest: true);
            for (int i = 0; i < until; i++) Step(2048);
            Step(2048, isAtRest: false);
            Assert.Equal((CalibrationState.Begun, CalibrationReason.NotAtRest), (_session.State, _session.Reason));
        }
    }

    [Fact]
    public void Save_NotAtRest_IsRefusedAndMayBeAskedAgain()
    {
        Complete();
        Assert.Equal(CalibrationReason.NotAtRest, _session.Save(isAtRest: false));
        Assert.Equal(0, _chip.Writes);

        Assert.Equal(CalibrationReason.Done, _session.Save(isAtRest: true));
    }

    [Theory]
    [InlineData(2129, CalibrationReason.Done)]
    [InlineData(2130, CalibrationReason.Noisy)]
    public void Samples_ThatDifferByMoreThanTwoPerCent_AreRefused(int last, CalibrationReason reason)
    {
        // 2 % of 4095 are 81.9 counts.
        _session.Begin(Amps);
        _session.TakeZero(isAtRest: true);
        for (int i = 0; i < 255; i++) Step(2048);
        Step(last);

        Assert.Equal(reason, _session.Reason);
    }

    [Theory]
    [InlineData(-1, CalibrationReason.NotRead)]
    [InlineData(4096, CalibrationReason.NotRead)]
    [InlineData(4095, CalibrationReason.AtRail)]
    public void Zero_ThatCannotBe_IsRefused(int counts, CalibrationReason reason)
    {
        _session.Begin(Amps);

        Assert.Equal(reason, TakeZero(counts));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4095)]
    public void Span_AtARail_IsRefused(int counts)
    {
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(CalibrationReason.AtRail, TakeSpan(counts, 240f));
        Assert.Equal(CalibrationState.ZeroTaken, _session.State);
    }

    [Fact]
    public void Zero_AtTheLowerRail_IsAZero()
    {
        Channel.Nominal.OffsetCounts = 0f;
        _session.Begin(Amps);

        Assert.Equal(CalibrationReason.Done, TakeZero(0));
    }

    [Theory]
    [InlineData(2457, CalibrationReason.Done)]
    [InlineData(2458, CalibrationReason.OffsetOutOfRange)]
    [InlineData(1639, CalibrationReason.Done)]
    [InlineData(1638, CalibrationReason.OffsetOutOfRange)]
    public void Offset_FurtherThanTenPerCentFromTheNominal_IsRefused(int counts, CalibrationReason reason)
    {
        // 10 % of 4095 are 409.5 counts: 1638.5 to 2457.5.
        _session.Begin(Amps);

        Assert.Equal(reason, TakeZero(counts));
    }

    /// <summary>10 rad/s of a shaft that coasts are 100 counts: steady enough for a zero, and not one.</summary>
    [Theory]
    [InlineData(2088, CalibrationReason.Done)]
    [InlineData(2089, CalibrationReason.OffsetOutOfRange)]
    [InlineData(2007, CalibrationReason.OffsetOutOfRange)]
    [InlineData(2148, CalibrationReason.OffsetOutOfRange)]
    public void OffsetOfATacho_FurtherThanOnePerCentFromTheNominal_IsRefused(int counts, CalibrationReason reason)
    {
        // 1 % of 4095 are 40.95 counts: 2007.05 to 2088.95.
        _session.Begin(CalibrationChannel.TachoSpeed);

        Assert.Equal(reason, TakeZero(counts));
    }

    [Theory]
    [InlineData(2048 + 409, CalibrationReason.SpanTooSmall)]
    [InlineData(2048 + 410, CalibrationReason.Done)]
    [InlineData(2048 - 409, CalibrationReason.SpanTooSmall)]
    [InlineData(2048, CalibrationReason.SpanTooSmall)]
    public void Span_NearerThanTenPerCentToTheZero_IsRefused(int counts, CalibrationReason reason)
    {
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(reason, TakeSpan(counts, 205f));
    }

    [Theory]
    [InlineData(249.9f, CalibrationReason.GainOutOfRange)]
    [InlineData(250f, CalibrationReason.Done)]
    [InlineData(1000f, CalibrationReason.Done)]
    [InlineData(1000.1f, CalibrationReason.GainOutOfRange)]
    [InlineData(-500f, CalibrationReason.GainOutOfRange)]
    public void Gain_OutsideHalfToTwiceTheNominal_IsRefused(float amps, CalibrationReason reason)
    {
        // 1000 counts at the nominal 0.5 A are 500 A.
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(reason, TakeSpan(3048, amps));
    }

    [Theory]
    [InlineData(500f, CalibrationReason.GainOutOfRange)]
    [InlineData(-500f, CalibrationReason.Done)]
    public void Gain_OfASensorMountedTheOtherWayRound_HasItsSign(float amps, CalibrationReason reason)
    {
        Channel.Nominal.UnitsPerCount = -0.5f;
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(reason, TakeSpan(3048, amps));
    }

    [Theory]
    [InlineData(0f)]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    public void TrueValue_ThatIsNone_IsRefused(float amps)
    {
        _session.Begin(Amps);
        TakeZero(2048);

        Assert.Equal(CalibrationReason.UnusableValue, _session.TakeSpan(amps));
    }

    [Fact]
    public void Save_MemoryThatFails_SaysSoAndChangesNothing()
    {
        Complete();
        _chip.StuckAddress = TwoCopyStore.HeadBytes;

        Assert.Equal(CalibrationReason.NotStored, _session.Save(isAtRest: true));

        Assert.Equal((2048f, 0.5f), (Channel.InForce.OffsetCounts, Channel.InForce.UnitsPerCount));
    }

    [Fact]
    public void Undo_PutsTheFormerInForce_OnlyAtRest()
    {
        Complete();
        _session.Save(isAtRest: true);

        Assert.Equal(CalibrationReason.NotAtRest, _session.Undo(Amps, isAtRest: false));
        Assert.Equal(0.48f, Channel.InForce.UnitsPerCount);
        Assert.Equal(CalibrationReason.Done, _session.Undo(Amps, isAtRest: true));

        Assert.Equal((2048f, 0.5f), (Channel.InForce.OffsetCounts, Channel.InForce.UnitsPerCount));
    }

    [Fact]
    public void Abort_OrAnotherBegin_DropsWhatWasTaken()
    {
        Complete();
        _session.Abort();
        Assert.Equal(CalibrationReason.NotBegun, _session.Save(isAtRest: true));
        Complete();
        _session.Begin(CalibrationChannel.SupplyVolts);

        Assert.Equal(CalibrationReason.NothingToSave, _session.Save(isAtRest: true));
        Assert.Equal(0, _chip.Writes);
    }

    private void Complete()
    {
        _session.Begin(Amps);
        TakeZero(2050);
        TakeSpan(2550, 240f);
    }

    private CalibrationReason TakeZero(int counts)
    {
        Assert.Equal(CalibrationReason.Done, _session.TakeZero(isAtRest: true));
        return Taken(counts);
    }

    private CalibrationReason TakeSpan(int counts, float amps)
    {
        Assert.Equal(CalibrationReason.Done, _session.TakeSpan(amps));
        return Taken(counts);
    }

    private CalibrationReason Taken(int counts)
    {
        for (int i = 0; i < 256; i++) Step(counts);
        Assert.False(_session.IsTaking);
        return _session.Reason;
    }

    private void Step(int counts, bool isAtRest = true)
    {
        _channels[(int)_session.Channel].Counts = counts;
        _session.Step(isAtRest);
    }
}
