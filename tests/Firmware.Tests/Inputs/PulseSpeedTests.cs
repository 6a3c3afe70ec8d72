using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>Speed from a pick-up's pulses while all of them come, at rest, and when they end. Expected values are arithmetic.</summary>
public sealed class PulseSpeedTests
{
    private const double Turn = 2 * Math.PI;

    [Theory]
    [InlineData(1, 10)]
    [InlineData(1, 150)]
    [InlineData(1, 6000)]
    [InlineData(60, 1)]
    [InlineData(60, 100)]
    [InlineData(60, 1000)]
    public void Steady_AnySpeed_ErrorIsAtMostResolutionBySpan(int edgesPerTurn, double radPerSec)
    {
        PulseRig rig = new(new PulseSetup { EdgesPerTurn = edgesPerTurn, HighestRadPerSecSquared = 50f, MostEdgesPerSecond = 10_000 });
        rig.Steady(0, 4e6, radPerSec).Run(2.5);

        double span = Math.Max(rig.Setup.ShortestSpanMicroseconds, Turn / edgesPerTurn / radPerSec * 1e6);
        Assert.InRange(PulseRig.WorstError(rig.Run(4), radPerSec), 0, 1 / span + 1e-6);
        Assert.True(rig.Sensor.IsValid);
    }

    [Fact]
    public void Steady_CoarseClock_ErrorGrowsWithTheResolution()
    {
        PulseRig fine = new(PulseRig.Sixty());
        PulseRig coarse = new(PulseRig.Sixty(), resolutionMicroseconds: 100);
        fine.Steady(0, 3e6, 77.7).Run(1);
        coarse.Steady(0, 3e6, 77.7).Run(1);

        // 100 us of a span of at least 5 ms is 2 %; 1 us is 0.02 %.
        Assert.InRange(PulseRig.WorstError(coarse.Run(3), 77.7), 0.005, 0.02);
        Assert.InRange(PulseRig.WorstError(fine.Run(3), 77.7), 0, 0.0002);
    }

    [Fact]
    public void Steady_RandomSpeedsAndCounters_ErrorIsAtMostResolutionBySpan()
    {
        Gen.Select(Gen.Double[8, 900], Gen.Int, Gen.Int).Sample(
            (radPerSec, counterStart, countStart) =>
            {
                PulseRig rig = new(PulseRig.OneATurn(), counterStart, countStart);
                rig.Steady(0, 3e6, radPerSec).Run(1.7);
                double span = Math.Max(rig.Setup.ShortestSpanMicroseconds, Turn / radPerSec * 1e6);
                Assert.InRange(PulseRig.WorstError(rig.Run(2.5), radPerSec), 0, 1 / span + 1e-6);
            },
            iter: 100, threads: 1);
    }

    [Theory]
    [InlineData(int.MaxValue - 500_000)]
    [InlineData(int.MinValue)]
    [InlineData(-1)]
    public void CounterAndCount_WrapOnTheWay_NothingShows(int start)
    {
        PulseRig rig = new(PulseRig.Sixty(), counterStart: start, countStart: int.MaxValue - 200);
        rig.Steady(0, 1.5e6, 40).Run(0.1);

        List<(double, float, bool IsValid)> shown = rig.Run(1.5);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 40), 0, 0.0003);
        Assert.Equal((0, 0), rig.PutRight);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(500)]
    public void Crawl_OnePulseATurn_IsKnownFromTheSecondEdgeOn(int countStart)
    {
        // 8 rad/s, one turn in 0.7854 s. What was counted before the first reading is no edge.
        PulseRig rig = new(countStart: countStart);
        rig.Steady(100_000, 3e6, 8);

        Assert.All(rig.Run(0.885), row => Assert.False(row.IsValid));
        Assert.Equal((0.886, 8.0), (rig.Run(0.886).Single().Seconds, Math.Round(rig.Sensor.RadPerSec, 4)));
    }

    [Fact]
    public void Acceleration_SteadyThirtyRadPerSecSquared_LagIsHalfASpanAndAPeriod()
    {
        // 60 edges a turn: the angle is 15 t^2, edge n at sqrt(n Turn / 60 / 15).
        PulseRig rig = new(PulseRig.Sixty());
        for (int n = 1; n < 9000; n++) rig.Edge(Math.Sqrt(n * Turn / 60 / 15) * 1e6);
        rig.Run(1);

        foreach ((double seconds, float radPerSec, bool isValid) in rig.Run(4))
        {
            // Shown until the next measurement: half a span, one whole span of up to 7 ms, one period.
            Assert.True(isValid);
            Assert.InRange(30 * seconds - radPerSec, 0, 30 * 0.012);
        }

        Assert.Equal((0, 0), rig.PutRight);
    }

    [Theory]
    [InlineData(1, 50, 0)]
    [InlineData(1, -25, 0)]
    [InlineData(60, 50, 0)]
    [InlineData(60, -25, 0)]
    [InlineData(1, 50, 0.1)]
    [InlineData(1, -25, 0.1)]
    public void Acceleration_TheHighestThatTheShaftCan_IsNeverTakenForWrongEdges(int edgesPerTurn, double radPerSecSquared, double uneven)
    {
        // From rest, or down from 200 rad/s: the angle is a t^2 / 2, or 200 t - |a| t^2 / 2 of which the earlier root counts.
        PulseRig rig = new(new PulseSetup { EdgesPerTurn = edgesPerTurn, HighestRadPerSecSquared = (float)Math.Abs(radPerSecSquared), MostEdgesPerSecond = 10_000 });
        double first = radPerSecSquared > 0 ? 0 : 200;
        for (int n = 1; n < 100 * edgesPerTurn; n++)
        {
            double angle = (n + n % 2 * uneven) * Turn / edgesPerTurn;
            double root = Math.Sqrt(first * first + 2 * radPerSecSquared * angle);
            rig.Edge((root - first) / radPerSecSquared * 1e6);
        }

        rig.Run(3.5);

        Assert.True(rig.Sensor.IsValid);
        Assert.Equal((0, 0), rig.PutRight);
    }

    [Fact]
    public void Standing_NoCurrent_IsZeroOnceTheStandstillTimeIsOver()
    {
        PulseRig rig = new() { ArmatureAmps = 0.9f };

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(2.5);

        // The timer begins with the first reading, at 1 ms.
        Assert.Equal(2.001, shown.First(row => row.IsValid).Seconds, 6);
        Assert.All(shown, row => Assert.Equal(0f, row.RadPerSec));
    }

    [Theory]
    [InlineData(1.1f)]
    [InlineData(-1.1f)]
    [InlineData(float.NaN)]
    public void NoEdges_CurrentFlows_IsNeverZeroSpeed(float armatureAmps)
    {
        PulseRig rig = new() { ArmatureAmps = armatureAmps };

        Assert.All(rig.Run(10), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void Standing_CurrentComesAndTheShaftStaysStill_IsUnknownAfterTheTimeOut()
    {
        PulseRig rig = new() { ArmatureAmps = 0f };
        rig.Run(3);
        rig.ArmatureAmps = 100f;

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(6);

        Assert.Equal(4.001, shown.First(row => !row.IsValid).Seconds, 6);
        Assert.All(shown.Where(row => row.Seconds > 4), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void Standing_ShaftBreaksAway_FirstPeriodIsShownAndTheStandstillIsNoPartOfIt()
    {
        PulseRig rig = new() { ArmatureAmps = 0f };
        rig.Steady(3.5e6, 6e6, 12).Run(3);
        rig.ArmatureAmps = 100f;

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(5);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.All(shown, row => Assert.True(row.RadPerSec is 0f or > 11.99f and < 12.01f, $"{row}"));
        Assert.Equal(4.024, shown.First(row => row.RadPerSec > 0).Seconds, 6);
    }

    [Fact]
    public void Standing_ProvenBeforeTheTimeOut_EdgesOfBeforeHaveNoPartInTheNextPeriod()
    {
        StandstillSetup standstill = new() { ZeroAmps = 1f, StandstillMicroseconds = 300_000, TimeOutMicroseconds = 2_000_000 };
        PulseRig rig = new(standstill: standstill) { ArmatureAmps = 0f };
        rig.Steady(0, 1e6, 30).Steady(2e6, 4e6, 12).Run(1.9);
        Assert.Equal((true, 0f), (rig.Sensor.IsValid, rig.Sensor.RadPerSec));

        // Two edges of 12 rad/s lie 0.524 s apart.
        rig.ArmatureAmps = 100f;
        Assert.All(rig.Run(2.523), row => Assert.Equal(0f, row.RadPerSec));
        Assert.Equal(12f, rig.Run(2.524).Single().RadPerSec, 1e-3f);
    }

    [Fact]
    public void EdgesEnd_CurrentFlows_SpeedGoesDownNoFasterThanTheShaftCanAndIsUnknownAfterFourMissingEdges()
    {
        // One pulse a turn at 100 rad/s: 62.8 ms each.
        PulseRig rig = new();
        rig.Steady(0, 1e6, 100).Run(1);

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(3);

        (double Seconds, float RadPerSec, bool IsValid) last = shown.Last(row => row.IsValid);
        Assert.InRange(last.Seconds, 1.22, 1.30);
        Assert.InRange(last.RadPerSec, 85, 100 - 50 * 0.2);
        Assert.All(shown.Where(row => row.Seconds > last.Seconds), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void EdgesEnd_CrawlWithCurrent_IsBoundedByOneEdgeAndUnknownAfterTheTimeOut()
    {
        // 8 rad/s; without another edge the shaft turns no faster than one turn in the time since the last, at 1.5708 s.
        PulseRig rig = new();
        rig.Steady(0, 1.6e6, 8).Run(1.6);

        foreach ((double seconds, float radPerSec, bool isValid) in rig.Run(2.57))
        {
            double since = seconds - 1.570796;
            Assert.True(isValid);
            Assert.Equal(Math.Min(8, Turn / since), radPerSec, 2);
        }

        Assert.All(rig.Run(9).Skip(2), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void EdgesEnd_NoCurrent_IsZeroOnlyAfterTheStandstillTime()
    {
        PulseRig rig = new() { ArmatureAmps = 0f };
        rig.Steady(0, 1e6, 100).Run(1);

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(4);

        (double Seconds, float, bool) zero = shown.First(row => row is { IsValid: true, RadPerSec: 0f });
        Assert.InRange(zero.Seconds, 2.94, 3.0);
        Assert.All(shown.Where(row => row.Seconds is > 1.5 and < 2.9), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void EdgesComeBack_AfterTheTimeOut_IsKnownAgainFromTheSecondEdgeOn()
    {
        PulseRig rig = new();
        rig.Steady(0, 1e6, 100).Steady(5e6, 8e6, 30).Run(5.2);
        Assert.False(rig.Sensor.IsValid);

        rig.Run(5.211);

        Assert.Equal((true, 30.0), (rig.Sensor.IsValid, Math.Round(rig.Sensor.RadPerSec, 3)));
    }
}
