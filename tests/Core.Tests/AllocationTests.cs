using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The tick makes no garbage: on the board a collection would stop the control loop.</summary>
public sealed class AllocationTests
{
    private const int Cycles = 200;
    private const int TicksPerCycle = 500;

    [Fact]
    public void Tick_WholeStartsTripsAndResets_AllocatesNothing()
    {
        Bench bench = new();
        Cycle(bench);

        long before = GC.GetAllocatedBytesForCurrentThread();
        int completed = 0;
        for (int i = 0; i < Cycles; i++) completed += Cycle(bench);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal(0, allocated);
        Assert.Equal(Cycles, completed);
    }

    [Fact]
    public void Tick_NotSetUp_AllocatesNothing()
    {
        Bench bench = new Bench(settings => settings.StageCount = 0).Tick();

        long before = GC.GetAllocatedBytesForCurrentThread();
        bench.Ticks(1000);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal(0, allocated);
    }

    private static int Cycle(Bench bench)
    {
        bench.Readings.SpeedRadPerSec = 0f;
        bench.Tick().PressStart();
        for (int i = 0; i < TicksPerCycle - 6; i++)
        {
            bench.Readings.SpeedRadPerSec = i * 0.2f;
            bench.Tick();
        }

        int completed = bench.Controller.Phase == Phase.Running ? 1 : 0;
        bench.PressStop();
        bench.Readings.ArmatureAmps = float.NaN;
        bench.Tick();
        bench.Readings.ArmatureAmps = 0f;
        bench.Tick().PressReset();
        return completed;
    }
}
