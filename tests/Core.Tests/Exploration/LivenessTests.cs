using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>No dead ends: from every state there is, a healthy plant and an operator who asks for it come to the goal soon.</summary>
public sealed class LivenessTests
{
    private const int MostTicks = 120;

    public static TheoryData<string> Sets => ExplorationTests.Sets;

    [Theory]
    [MemberData(nameof(Sets))]
    public void Healthy_EveryState_RunsSoonAndOnlyWhatHasRunOutTripsOnTheWay(string name)
    {
        ExploredSet set = ExploredSet.Of(name);
        SortedDictionary<string, int> longest = [];
        SortedDictionary<string, int> trips = [];
        set.Explored.ForEach(() => new Machine(set), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase from = machine.Controller.Phase;
            int ticks = Ticks(set, machine, () => machine.Outputs.RunningLamp, () =>
            {
                // From ready nothing has run out yet, and nothing was measured before.
                FaultId fault = machine.Controller.Fault.Id;
                if (!set.RunOut.Contains(fault) || from == Phase.Ready) Fail(set, state, fault.ToString());
                lock (trips) trips[fault.ToString()] = trips.GetValueOrDefault(fault.ToString()) + 1;
            });
            if (ticks >= MostTicks) Fail(set, state, "not running");
            Keep(longest, from, ticks);
        });
        ExplorationTests.Tell($"{name}: {Told(longest)}; states by way of a trip: {Told(trips)}");

        Assert.InRange(longest.Values.Max(), 1, set.MostTicks);
        // Most states run without one.
        Assert.InRange(trips.Values.Sum(), 0, set.Explored.States.Count / 2);
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Healthy_StoppingBrakingOrTripped_IsReadySoon(string name)
    {
        ExploredSet set = ExploredSet.Of(name);
        SortedDictionary<string, int> longest = [];
        set.Explored.ForEach(() => new Machine(set), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase from = machine.Controller.Phase;
            if (from is not (Phase.Stopping or Phase.Braking or Phase.Tripped)) return;
            int ticks = Ticks(set, machine, () => machine.Controller.Phase == Phase.Ready && machine.Outputs.ReadyLamp, () => { });
            if (ticks >= MostTicks) Fail(set, state, "not ready");
            Keep(longest, from, ticks);
        });
        ExplorationTests.Tell($"{name}: {Told(longest)}");

        Assert.InRange(longest.Values.Max(), 1, set.MostTicks);
    }

    // A healthy plant; one press of start when ready, of reset when tripped and the cause has gone.
    private static int Ticks(ExploredSet set, Machine machine, Func<bool> reached, Action tripped)
    {
        Letter letter = set.Healthy(machine);
        int ticks = 0;
        bool hasTripped = machine.Controller.Phase == Phase.Tripped;
        for (; ticks < MostTicks && !reached(); ticks++)
        {
            Phase phase = machine.Controller.Phase;
            letter = set.Healthy(machine) with
            {
                Start = machine.Outputs.ReadyLamp,
                Reset = phase == Phase.Tripped && ticks > 0 && !letter.Reset,
            };
            string? broken = machine.Tick(letter);
            Assert.True(broken == null, broken);
            if (hasTripped || phase == Phase.Tripped || machine.Controller.Phase != Phase.Tripped) continue;
            hasTripped = true;
            tripped();
        }

        return ticks;
    }

    private static void Keep(SortedDictionary<string, int> longest, Phase from, int ticks)
    {
        lock (longest) longest[from.ToString()] = Math.Max(longest.GetValueOrDefault(from.ToString()), ticks);
    }

    private static string Told(SortedDictionary<string, int> longest) =>
        string.Join(", ", longest.Select(phase => $"{phase.Key} {phase.Value}"));

    private static void Fail(ExploredSet set, int[] state, string what) => Assert.Fail($"{what} after\n{set.Explored.Way(state)}");
}
