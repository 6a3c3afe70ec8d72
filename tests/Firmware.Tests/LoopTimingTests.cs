using Xunit;

namespace StarterCtl.Firmware.Tests;

/// <summary>A loop of 1000 us that may begin 300 us late. Expected values are arithmetic.</summary>
public sealed class LoopTimingTests
{
    private readonly LoopTiming _timing = new(1000, 300);

    [Theory]
    [InlineData(0)]
    [InlineData(int.MaxValue - 1500)]
    [InlineData(int.MinValue)]
    [InlineData(-1)]
    public void Periods_OnTime_AreDueEveryThousandMicrosecondsAcrossTheWrap(int start)
    {
        Assert.True(_timing.IsDue(start));
        for (int period = 0; period < 10; period++)
        {
            int due = unchecked(start + 1000 * period);
            _timing.Begin(due);
            Assert.True(_timing.Finish(unchecked(due + 400)));
            Assert.False(_timing.IsDue(unchecked(due + 999)));
            Assert.True(_timing.IsDue(unchecked(due + 1000)));
        }

        Assert.Equal((0, 0, 400), (_timing.LateCount, _timing.WorstLateMicroseconds, _timing.WorstTickMicroseconds));
    }

    [Fact]
    public void Lateness_WithinItsLimit_IsNoDriftAndStaysOnTime()
    {
        _timing.Begin(0);
        for (int period = 1; period <= 100; period++)
        {
            _timing.Begin(1000 * period + 300);
            Assert.True(_timing.Finish(1000 * period + 700));
        }

        Assert.Equal((0, 300), (_timing.LateCount, _timing.WorstLateMicroseconds));
        Assert.True(_timing.IsDue(101_000));
    }

    [Fact]
    public void Lateness_BeyondItsLimit_IsCountedAndThePeriodsBehindItMove()
    {
        _timing.Begin(0);
        _timing.Begin(1301);

        Assert.False(_timing.Finish(1400));
        Assert.Equal((1, 301), (_timing.LateCount, _timing.WorstLateMicroseconds));
        Assert.False(_timing.IsDue(2300));
        _timing.Begin(2301);
        Assert.True(_timing.Finish(2400));
        Assert.Equal(1, _timing.LateCount);
    }

    [Theory]
    [InlineData(1000, true)]
    [InlineData(1001, false)]
    [InlineData(-1, false)]
    public void Tick_LongerThanAPeriodOrBackwards_IsNotOnTime(int microseconds, bool isOnTime)
    {
        _timing.Begin(5000);

        Assert.Equal(isOnTime, _timing.Finish(5000 + microseconds));
    }

    [Fact]
    public void Lateness_BeyondHalfTheCounter_IsLateAndNotEarly()
    {
        _timing.Begin(0);
        _timing.Begin(unchecked(int.MaxValue + 5000));

        Assert.Equal((1, int.MaxValue), (_timing.LateCount, _timing.WorstLateMicroseconds));
    }
}
