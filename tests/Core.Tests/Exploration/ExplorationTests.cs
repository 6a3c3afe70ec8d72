using System;
using System.Linq;
using System.Threading;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>Every invariant on every tick from every state that the controller can come to at all.</summary>
public sealed class ExplorationTests
{
    /// <summary>Everything that there is, found once.</summary>
    internal static Lazy<Explorer> All { get; } = new(() => new Explorer(() => new Machine(), Alphabet.Letters()).Run());

    [Fact]
    public void Explore_EverySequenceOfInputs_HoldsEveryInvariant()
    {
        Explorer all = All.Value;
        Tell($"{all.States.Count} states, {all.Edges} edges, {all.Depth} ticks deep, {all.Took.TotalMilliseconds:F0} ms");

        Assert.Equal("", string.Join("\n\n", all.Broken.Select(broken => $"{broken.Key}\n{broken.Value}")));
        Assert.InRange(all.States.Count, 4000, int.MaxValue);
        Assert.InRange(all.Edges, 9_000_000, long.MaxValue);
        Assert.Equal(
            [
                "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating",
                "Ready to Tripped", "Running to Stopping", "Running to Tripped", "Stopping to Ready", "Stopping to Tripped",
                "Tripped to Ready",
            ],
            all.Ways);
    }

    [Fact]
    public void Explore_ProductOfAllInputs_HoldsEveryInvariantAndFindsNoOtherState()
    {
        Explorer all = All.Value;
        Letter[] letters = [.. Alphabet.Product()];
        string? wrong = null;
        all.ForEach(() => new Machine(), (machine, state) =>
        {
            int[] next = new int[state.Length];
            foreach (Letter letter in letters)
            {
                machine.Slots.Load(state);
                string? broken = machine.Tick(letter);
                machine.Slots.Save(next);
                if (broken != null || !all.Knows(next)) wrong = $"{broken ?? "a new state"}\n{all.Way(state)}\n{letter}";
            }
        });
        Tell($"{(long)letters.Length * all.States.Count} edges");

        Assert.Null(wrong);
    }

    [Fact]
    public void Explore_EveryState_OutputsBelongToThePhase() =>
        All.Value.ForEach(() => new Machine(), (machine, state) =>
        {
            machine.Slots.Load(state);
            Phase phase = machine.Controller.Phase;
            Outputs outputs = machine.Outputs;
            bool isRight = outputs.CloseLine == (phase is Phase.Accelerating or Phase.Running)
                && (outputs.CloseLine || outputs.CloseStages == 0)
                && (phase == Phase.Ready || !outputs.ReadyLamp)
                && (phase == Phase.Running || !outputs.RunningLamp)
                && outputs.TrippedLamp == (phase == Phase.Tripped);
            if (!isRight) Assert.Fail($"{phase} after\n{All.Value.Way(state)}");
        });

    [Fact]
    public void Explore_WhatIsOnlyTold_DecidesNothing()
    {
        Explorer all = All.Value;
        Letter[] letters = [.. Alphabet.Letters()];
        Assert.Equal(Slots.Told.Length, new Machine().Slots.ToldCount);
        long edges = 0;
        all.ForEach(() => new Machine(), (machine, state) =>
        {
            int[] nothing = new int[Slots.Told.Length];
            int[] nonsense = new int[Slots.Told.Length];
            Array.Fill(nonsense, BitConverter.SingleToInt32Bits(float.NaN));
            int[] one = new int[state.Length];
            int[] other = new int[state.Length];
            foreach (Letter letter in letters)
            {
                After(machine, state, nothing, letter, one);
                After(machine, state, nonsense, letter, other);
                if (!one.AsSpan().SequenceEqual(other)) Assert.Fail($"{all.Way(state)}\n{letter}");
            }

            Interlocked.Add(ref edges, letters.Length);
        });

        Assert.Equal(all.Edges, edges);
    }

    internal static void Tell(string line) => TestContext.Current.TestOutputHelper?.WriteLine(line);

    private static void After(Machine machine, int[] state, int[] told, Letter letter, int[] next)
    {
        machine.Slots.Load(state);
        machine.Slots.LoadTold(told);
        machine.Tick(letter);
        machine.Slots.Save(next);
    }
}
