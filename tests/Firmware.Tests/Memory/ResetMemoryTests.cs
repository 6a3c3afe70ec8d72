using System;
using Xunit;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>Why the board began anew, and when that locks starting out.</summary>
public sealed class ResetMemoryTests
{
    private const int Second = 1_000_000;

    private readonly MemoryChip _chip = new(256);

    [Fact]
    public void ThirdWatchdogReset_InARow_LocksOut()
    {
        Assert.Equal((0, false), Reset(ResetCause.PowerUp));
        Assert.Equal((1, false), Reset(ResetCause.Watchdog));
        Assert.Equal((2, false), Reset(ResetCause.Watchdog));
        Assert.Equal((3, true), Reset(ResetCause.Watchdog));
        Assert.Equal((3, true), Reset(ResetCause.Watchdog));
    }

    [Theory]
    [InlineData(ResetCause.PowerUp)]
    [InlineData(ResetCause.Brownout)]
    [InlineData(ResetCause.ResetInput)]
    [InlineData(ResetCause.Firmware)]
    [InlineData(ResetCause.Unknown)]
    public void OtherReset_BetweenThem_NeitherCountsNorClears(ResetCause cause)
    {
        Reset(ResetCause.Watchdog);
        Assert.Equal((1, false), Reset(cause));
        Reset(ResetCause.Watchdog);
        Reset(ResetCause.Watchdog);
        Assert.Equal((3, true), Reset(cause));
    }

    [Theory]
    [InlineData(599, true, 3)]
    [InlineData(601, false, 3)]
    [InlineData(601, true, 1)]
    public void CleanRun_OfTenMinutes_EndsTheRowOnceEveryCoilIsOff(int seconds, bool isAtRest, int resets)
    {
        Reset(ResetCause.Watchdog);
        ResetMemory memory = Boot(ResetCause.Watchdog);

        for (int i = 0; i < seconds; i++) memory.Step(Second, isAtRest);

        Assert.Equal(resets, Reset(ResetCause.Watchdog).Resets);
    }

    [Fact]
    public void CleanRun_Locked_EndsNoLock()
    {
        for (int i = 0; i < 3; i++) Reset(ResetCause.Watchdog);
        ResetMemory memory = Boot(ResetCause.PowerUp);

        for (int i = 0; i < 2000; i++) memory.Step(Second, true);

        Assert.True(memory.IsLockedOut);
    }

    [Theory]
    [InlineData(int.MaxValue, 600, 1)]
    [InlineData(int.MaxValue, 601, 0)]
    [InlineData(int.MinValue, 2000, 1)]
    public void Step_OfAnySize_CountsASecondAtMost(int microseconds, int steps, int resets)
    {
        Reset(ResetCause.Watchdog);
        ResetMemory memory = Boot(ResetCause.PowerUp);

        for (int i = 0; i < steps; i++) memory.Step(microseconds, true);

        Assert.Equal(resets, memory.WatchdogResets);
    }

    [Fact]
    public void Cause_OfThisAndTheTimeBefore_AreKnown()
    {
        Assert.Equal(ResetCause.Unknown, Boot(ResetCause.PowerUp).FormerCause);
        ResetMemory memory = Boot(ResetCause.Brownout);

        Assert.Equal((ResetCause.Brownout, ResetCause.PowerUp), (memory.Cause, memory.FormerCause));
    }

    [Fact]
    public void PowerUp_AfterAPowerUp_WritesNothing()
    {
        Reset(ResetCause.PowerUp);
        int writes = _chip.Writes;
        Reset(ResetCause.PowerUp);

        Assert.Equal(writes, _chip.Writes);
    }

    [Fact]
    public void Clear_IsKeptOverAReboot()
    {
        for (int i = 0; i < 3; i++) Reset(ResetCause.Watchdog);
        Assert.True(Boot(ResetCause.PowerUp).Clear());

        Assert.Equal((0, false), Reset(ResetCause.PowerUp));
    }

    [Fact]
    public void Count_ThatCannotBeReadOrKept_LocksOut()
    {
        Array.Clear(_chip.Bytes);
        Assert.Equal((3, true), Reset(ResetCause.PowerUp));
        ResetMemory noRoom = new(new MemoryChip(16, 16), 0, ResetCause.PowerUp);
        Assert.True(noRoom.IsLockedOut);
        Assert.False(noRoom.Clear());
        Assert.True(noRoom.IsLockedOut);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(4)]
    [InlineData(int.MinValue)]
    public void Count_ThatNobodyWrote_LocksOut(int count)
    {
        TwoCopyStore store = new(_chip, 0, ResetMemory.ContentBytes, ResetMemory.Version);
        store.Content.PutInt(0, count);
        store.Content.Length = ResetMemory.ContentBytes;
        Assert.True(store.TrySave());

        Assert.Equal((3, true), Reset(ResetCause.PowerUp));
    }

    [Fact]
    public void PowerCut_AtEveryByteOfTheCounting_LosesNoReset()
    {
        bool isWhole = false;
        for (int cut = 0; !isWhole; cut++)
        {
            MemoryChip chip = new(256) { Torn = TornByte.Anything };
            _ = new ResetMemory(chip, 0, ResetCause.Watchdog);
            _ = new ResetMemory(chip, 0, ResetCause.Watchdog);
            chip.BytesToCut = cut;
            isWhole = chip.Survives(() => _ = new ResetMemory(chip, 0, ResetCause.Watchdog));

            Assert.InRange(new ResetMemory(chip, 0, ResetCause.PowerUp).WatchdogResets, isWhole ? 3 : 2, 3);
        }
    }

    private ResetMemory Boot(ResetCause cause) => new(_chip, 0, cause);

    private (int Resets, bool IsLockedOut) Reset(ResetCause cause)
    {
        ResetMemory memory = Boot(cause);
        return (memory.WatchdogResets, memory.IsLockedOut);
    }
}
