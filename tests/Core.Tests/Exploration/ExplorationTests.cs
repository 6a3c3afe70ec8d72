using System;
using System.Linq;
using System.Threading;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>Every invariant on every tick from every state that the controller can come to at all.</summary>
public sealed class ExplorationTests
{
    public static TheoryData<string> Sets => [.. ExploredSet.Names];

    [Theory]
    [MemberData(nameof(Sets))]
    public void Explore_EverySequenceOfInputs_HoldsEveryInvariant(string name)
    {
        ExploredSet set = ExploredSet.Of(name);
        Assert.Equal(SettingId.None, set.Settings().FirstProblem());
        Assert.Equal(0, set.Settings().StartsPerHour);
        Explorer all = set.Explored;
        Tell($"{name}: {all.States.Count} states, {all.Edges} edges, {all.Depth} ticks deep, {all.Took.TotalMilliseconds:F0} ms");

        foreach ((string rule, string way) in all.Broken) Tell($"{rule}\n{way}");
        Assert.Equal("", string.Join("\n\n", all.Broken.Select(broken => $"{broken.Key}\n{broken.Value}")));
        Assert.InRange(all.States.Count, set.LeastStates, int.MaxValue);
        Assert.InRange(all.Edges, set.LeastEdges, long.MaxValue);
        Assert.Equal(set.Ways, all.Ways);
    }

    [Fact]
    public void Explore_ProductOfAllInputs_HoldsEveryInvariantAndFindsNoOtherState()
    {
        Explorer all = Alphabet.Set.Explored;
        Letter[] letters = [.. Alphabet.Product()];
        string? wrong = null;
        all.ForEach(() => new Machine(Alphabet.Set), (machine, state) =>
        {
            int[] next = new int[state.Length];
            for (int i = Share(state, 16); i < letters.Length; i += 16)
            {
                Letter letter = letters[i];
                machine.Slots.Load(state);
                string? broken = machine.Tick(letter);
                machine.Slots.Save(next);
                if (broken != null || !all.Knows(next)) wrong = $"{broken ?? "a new state"}\n{all.Way(state)}\n{letter}";
            }
        });
        Tell($"{(long)letters.Length * all.States.Count / 16} edges");

        if (wrong != null) Assert.Fail(wrong);
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Explore_EveryState_OutputsBelongToThePhase(string name)
    {
        ExploredSet set = ExploredSet.Of(name);
        bool bare = set == Alphabet.Set;
        set.Explored.ForEach(() => new Machine(set), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase phase = machine.Controller.Phase;
            Outputs outputs = machine.Outputs;
            bool isRight = (!outputs.CloseLine || phase is Phase.Accelerating or Phase.Running)
                && (!bare || outputs.CloseLine || phase is not Phase.Running)
                && (outputs.CloseLine || outputs.CloseStages == 0 || phase == Phase.Accelerating)
                && (!outputs.CloseBrake || phase == Phase.Braking)
                && (phase == Phase.Ready || !outputs.ReadyLamp)
                && (phase == Phase.Running || !outputs.RunningLamp)
                && outputs.TrippedLamp == (phase == Phase.Tripped);
            if (!isRight) Assert.Fail($"{phase} after\n{set.Explored.Way(state)}");
        });
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Explore_WhatIsOnlyTold_DecidesNothing(string name)
    {
        ExploredSet set = ExploredSet.Of(name);
        Explorer all = set.Explored;
        Letter[] letters = [.. set.Letters()];
        Assert.Equal([.. Slots.Told, .. set.Told], new Machine(set).Slots.ToldNames.ToHashSet());
        long edges = 0;
        all.ForEach(() => new Machine(set), (machine, state) =>
        {
            int[] nothing = machine.Slots.Nothing();
            int[] nonsense = machine.Slots.Nonsense();
            int[] one = new int[state.Length];
            int[] other = new int[state.Length];
            int first = Share(state, 4);
            for (int i = first; i < letters.Length; i += 4)
            {
                Letter letter = letters[i];
                After(machine, state, nothing, letter, one);
                After(machine, state, nonsense, letter, other);
                if (!one.AsSpan().SequenceEqual(other)) Assert.Fail($"{all.Way(state)}\n{letter}");
            }

            Interlocked.Add(ref edges, (letters.Length - first + 3) / 4);
        });

        Assert.InRange(edges, all.Edges / 4 - all.States.Count, all.Edges / 4 + all.States.Count);
    }

    internal static void Tell(string line) => TestContext.Current.TestOutputHelper?.WriteLine(line);

    // Not every letter from every state, but from each state others.
    private static int Share(int[] state, int count)
    {
        uint sum = 0;
        foreach (int number in state) sum = (sum * 31) + (uint)number;
        return (int)(sum % (uint)count);
    }

    private static void After(Machine machine, int[] state, int[] told, Letter letter, int[] next)
    {
        machine.Slots.Load(state);
        machine.Slots.LoadTold(told);
        machine.Tick(letter);
        machine.Slots.Save(next);
    }
}
