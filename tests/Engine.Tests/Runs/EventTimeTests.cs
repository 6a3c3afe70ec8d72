using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>When happenings come: on a tick, between ticks, together, and behind the last whole period.</summary>
public sealed class EventTimeTests
{
    private static readonly Rig Short = Rigs.LineShaft with { Control = Rigs.Panel, DurationSeconds = 0.1005 };

    [Theory]
    [InlineData(0.1003)]
    [InlineData(0.1005)]
    public void Run_EventBehindTheLastWholePeriod_Happens(double at)
    {
        RunResult run = (Short with { Events = [new RunEvent(at, 20, null, null)] }).Run();

        TimelineEntry step = Assert.Single(run.Timeline, entry => entry.Event != null);
        Assert.Equal(at, step.Seconds, 1e-12);
    }

    [Fact]
    public void Run_DurationBetweenTicks_GoesOnToTheNextTick()
    {
        Record record = new(1000);

        (Short with { Events = [new RunEvent(0.1003, null, 110, null)] }).Run(record);

        Assert.Equal(0.101, record.Samples[^1].TimeSeconds, 1e-12);
        Assert.Equal(220, record.Samples[^2].SupplyVolts);
        Assert.Equal(110, record.Samples[^1].SupplyVolts);
    }

    [Fact]
    public void Run_EventsAtTheSameInstant_AllHappenInTheirOrder()
    {
        RunEvent[] events =
        [
            new(0.05, 20, null, null), new(0.05, null, 210, null), new(0.05, null, null, OperatorCommand.Stop), new(0.05, 30, 200, null),
        ];

        RunResult run = (Short with { Events = [new RunEvent(0, null, null, OperatorCommand.Start), .. events] }).Run();

        Assert.Equal(events, run.Timeline.Where(entry => entry.Event != null).Select(entry => entry.Event).Skip(1));
        Assert.Equal(0.05, Assert.Single(run.Phases, entry => entry.Phase == Phase.Stopping).Seconds, 1e-9);
    }

    // Many a tick's time lies one rounding below the time that a person writes for it: 3 x 0.0001 and 0.0003.
    [Theory]
    [InlineData(1000)]
    [InlineData(700)]
    [InlineData(100)]
    public void Run_EventExactlyOnATick_IsSeenByThatTick(int periodMicroseconds)
    {
        Rig rig = Short with { Control = Rigs.Panel with { PeriodMicroseconds = periodMicroseconds } };
        for (int tick = 1; tick < 100; tick++)
        {
            double at = tick * periodMicroseconds / 1e6;
            Record record = new(periodMicroseconds);

            RunResult run = (rig with { Events = [new RunEvent(0, null, null, OperatorCommand.Start), new RunEvent(at, null, 150, OperatorCommand.Stop)] }).Run(record);

            Assert.Equal(at, Assert.Single(run.Phases, entry => entry.Phase == Phase.Stopping).Seconds, 1e-12);
            Assert.Equal(220, record.Samples[tick].SupplyVolts);
            Assert.Equal(150, record.Samples[tick + 1].SupplyVolts);
        }
    }
}
