using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>No dead ends: from every state there is, a healthy plant and an operator who asks for it come to the goal soon.</summary>
public sealed class LivenessTests
{
    private const int MostTicks = 100;

    private readonly Explorer _all = ExplorationTests.All.Value;

    [Fact]
    public void Healthy_EveryState_RunsSoonAndOnlyARunOutStageTimeTripsOnTheWay()
    {
        SortedDictionary<string, int> longest = [];
        int trips = 0;
        Settings settings = Alphabet.Settings();
        _all.ForEach(() => new Machine(), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase from = machine.Controller.Phase;
            int inStage = state[machine.Slots.IndexOf("Sequencer._inStageMicroseconds")];
            int ticks = Ticks(machine, () => machine.Outputs.RunningLamp, () =>
            {
                if (from == Phase.Tripped) return;
                // What it takes from here: a tick that finds everything met, the confirm time, a tick for the contact.
                int needed = settings.ConfirmMicroseconds + 2 * Alphabet.TickMicroseconds;
                if (machine.Controller.Fault.Id != FaultId.StageTookTooLong || inStage + needed < settings.MaximumStageMicroseconds) Fail(state);
                lock (longest) trips++;
            });
            if (ticks >= MostTicks) Fail(state);
            Keep(longest, from, ticks);
        });
        ExplorationTests.Tell($"{Told(longest)}; {trips} states by way of a trip");

        Assert.Equal("Accelerating 19, Ready 15, Running 1, Stopping 15, Tripped 16", Told(longest));
        Assert.InRange(trips, 1, _all.States.Count / 10);
    }

    [Fact]
    public void Healthy_StoppingOrTripped_IsReadySoon()
    {
        SortedDictionary<string, int> longest = [];
        _all.ForEach(() => new Machine(), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase from = machine.Controller.Phase;
            if (from is not (Phase.Stopping or Phase.Tripped)) return;
            int ticks = Ticks(machine, () => machine.Controller.Phase == Phase.Ready && machine.Outputs.ReadyLamp, () => { });
            if (ticks >= MostTicks) Fail(state);
            Keep(longest, from, ticks);
        });
        ExplorationTests.Tell(Told(longest));

        Assert.Equal("Stopping 1, Tripped 2", Told(longest));
    }

    // Contacts follow their coils, the shaft is as fast as the stage asks for, one press of start when ready, of reset when tripped.
    private static int Ticks(Machine machine, Func<bool> reached, Action tripped)
    {
        Letter letter = Alphabet.Healthy;
        int ticks = 0;
        for (; ticks < MostTicks && !reached(); ticks++)
        {
            Phase phase = machine.Controller.Phase;
            letter = Alphabet.Healthy with
            {
                Line = machine.Outputs.CloseLine,
                Stages = machine.Outputs.CloseStages,
                BackEmfVolts = machine.Controller.Stage == 1 ? 125f : 187.5f,
                Start = machine.Outputs.ReadyLamp,
                Reset = phase == Phase.Tripped && ticks > 0 && !letter.Reset,
            };
            Assert.Null(machine.Tick(letter));
            if (phase != Phase.Tripped && machine.Controller.Phase == Phase.Tripped) tripped();
        }

        return ticks;
    }

    private static void Keep(SortedDictionary<string, int> longest, Phase from, int ticks)
    {
        lock (longest) longest[from.ToString()] = Math.Max(longest.GetValueOrDefault(from.ToString()), ticks);
    }

    private static string Told(SortedDictionary<string, int> longest) =>
        string.Join(", ", longest.Select(phase => $"{phase.Key} {phase.Value}"));

    private void Fail(int[] state) => Assert.Fail($"no way to the goal after\n{_all.Way(state)}");
}
