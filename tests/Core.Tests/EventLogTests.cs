using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The ring of the last 32 events.</summary>
public sealed class EventLogTests
{
    [Fact]
    public void Log_Empty_HoldsNothingAtAnyIndex()
    {
        EventLog log = new(new Uptime());

        Assert.Equal(0, log.Count);
        Assert.All([-1, 0, 1, 31, 32, int.MaxValue, int.MinValue], index => AssertEmpty(log, index));
    }

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(31, 31, 1)]
    [InlineData(32, 32, 1)]
    [InlineData(33, 32, 2)]
    [InlineData(64, 32, 33)]
    [InlineData(1000, 32, 969)]
    public void Log_AnyNumberOfEvents_KeepsTheLast32InOrder(int added, int kept, int oldest)
    {
        EventLog log = new(new Uptime());

        for (int i = 1; i <= added; i++) log.Add(EventKind.Cutout, i, i * 0.5f);

        Assert.Equal(kept, log.Count);
        for (int i = 0; i < kept; i++)
        {
            Assert.Equal((EventKind.Cutout, oldest + i, (oldest + i) * 0.5f), (log.KindAt(i), log.NumberAt(i), log.ValueAt(i)));
        }

        AssertEmpty(log, kept);
        AssertEmpty(log, -1);
    }

    [Fact]
    public void Log_Times_AreWholeSecondsSinceTheControllerWasBuilt()
    {
        Uptime uptime = new();
        EventLog log = new(uptime);
        int[] microseconds = [0, 999_999, 1, 1_000_000_000, 500_000, 500_000];

        foreach (int elapsed in microseconds)
        {
            uptime.Advance(elapsed);
            log.Add(EventKind.Reset, 1, 0f);
        }

        Assert.Equal([0, 0, 1, 1001, 1001, 1002], Enumerable.Range(0, log.Count).Select(log.SecondsAt));
    }

    [Fact]
    public void Log_AStartAndATrip_TellsItInOrder()
    {
        Bench bench = new Bench().Run();
        bench.Tick(2_000_000);
        bench.Readings.ArmatureAmps = 1200f;
        bench.Tick();
        bench.Readings.ArmatureAmps = 0f;
        bench.Ticks(5).PressReset();

        EventLog log = bench.Controller.Log;
        Assert.Equal(
            ["Phase 2 1 0", "Cutout 1 240 0", "Cutout 2 240 0", "Cutout 3 240 0", "Phase 3 2 0", "Fault 3 1200 2", "Phase 5 3 2", "Reset 3 0 2", "Phase 1 5 2"],
            Enumerable.Range(0, log.Count).Select(i => $"{log.KindAt(i)} {log.NumberAt(i)} {log.ValueAt(i)} {log.SecondsAt(i)}"));
    }

    [Fact]
    public void Log_FaultThatStays_IsEnteredOnceAndAgainWhenItComesBack()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = 1200f;
        bench.Ticks(50);
        Assert.Equal([FaultId.Overcurrent], Logged.Faults(bench));

        bench.Readings.ArmatureAmps = 0f;
        bench.Ticks(5);
        bench.Readings.ArmatureAmps = -1200f;
        bench.Ticks(50);

        Assert.Equal([FaultId.Overcurrent, FaultId.Overcurrent], Logged.Faults(bench));
        bench.AssertTripped(FaultId.Overcurrent, 1200f, 1000f);
    }

    private static void AssertEmpty(EventLog log, int index) =>
        Assert.Equal((EventKind.None, 0, 0f, 0), (log.KindAt(index), log.NumberAt(index), log.ValueAt(index), log.SecondsAt(index)));
}
