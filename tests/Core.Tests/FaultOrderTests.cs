using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Two faults on one tick: the one that stands first in the table is latched, the other is in the event log.</summary>
public sealed class FaultOrderTests
{
    // Every two faults of the table that one tick can show together. Where the readings of one hide the other they cannot:
    // an unknown speed is not too fast, and no current flows past a closed contact.
    private const int Pairs = 135;

    [Fact]
    public void Faults_EveryPairOnTheSameTick_TheFirstOfTheTableIsLatchedAndTheOtherLogged()
    {
        HashSet<(FaultId, FaultId)> met = [];
        foreach (FaultCase one in FaultCases.All)
        {
            foreach (FaultCase other in FaultCases.All.Where(other => other.Id != one.Id && !Changed(one).Intersect(Changed(other)).Any()))
            {
                foreach (Scene scene in one.Trips.Intersect(other.Trips)) Meet(one, other, scene, met);
            }
        }

        Assert.Equal(Pairs, met.Count);
    }

    [Fact]
    public void Faults_StageAndStartTakeTooLongOnOneTick_TheStageIsNamed()
    {
        // The line's contact takes 10 ms: the stage's 300 ms and the start's 310 ms end together.
        Bench bench = Scenes.Prepare(Scene.LineClosing, settings =>
        {
            settings.MaximumStageMicroseconds = 300 * Bench.Millisecond;
            settings.MaximumStartMicroseconds = 310 * Bench.Millisecond;
        });

        bench.Ticks(309);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.StageTookTooLong, 1f, 0.3f);
    }

    [Fact]
    public void Faults_StageClosesByItselfAsTheStartTakesTooLong_TheContactIsNamed()
    {
        // It may be welded, and the motor live: the time that ran out says less.
        Bench bench = Scenes.Prepare(Scene.LineClosing, settings => settings.MaximumStartMicroseconds = 5 * Bench.Millisecond).Ticks(4);
        bench.Spoil = readings => readings.StagesClosed = 2;

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, 2f, 0f);
    }

    private static void Meet(FaultCase one, FaultCase other, Scene scene, HashSet<(FaultId, FaultId)> met)
    {
        Bench bench = Scenes.Prepare(scene, one.Change + other.Change);
        int ticks = Math.Max(one.Ticks, other.Ticks);
        for (int tick = 1; tick <= ticks; tick++)
        {
            // Together they may trip sooner than each by itself; then it is not the same tick.
            if (bench.Controller.Fault.IsLatched) return;
            bench.Spoil = null;
            foreach (FaultCase fault in (FaultCase[])[one, other])
            {
                int first = ticks - fault.Ticks + 1;
                if (tick >= first) bench.Spoil += fault.Spoil;
                if (tick == first) fault.Provoke(bench);
            }

            bench.Tick(tick == ticks ? Math.Max(one.TickMicroseconds, other.TickMicroseconds) : Bench.Millisecond);
        }

        if (!bench.Controller.Fault.IsLatched) return;
        List<FaultId> logged = [.. Logged.Faults(bench).OrderBy(Place)];
        Assert.True(logged[0] == bench.Controller.Fault.Id, $"{one} and {other} in {scene}: {bench.Controller.Fault.Id} before {logged[0]}");
        if (logged.Contains(one.Id) && logged.Contains(other.Id)) met.Add(Place(one.Id) < Place(other.Id) ? (one.Id, other.Id) : (other.Id, one.Id));
    }

    private static IEnumerable<string> Changed(FaultCase fault)
    {
        Readings readings = new() { ArmatureAmps = 3f, LineClosed = true, Permissives = 3 };
        Readings untouched = new() { ArmatureAmps = 3f, LineClosed = true, Permissives = 3 };
        fault.Spoil(readings);
        return typeof(Readings).GetFields().Where(field => !Equals(field.GetValue(readings), field.GetValue(untouched))).Select(field => field.Name);
    }

    private static int Place(FaultId id) => Array.FindIndex(FaultTable.Rows, row => row.Id == id);
}
