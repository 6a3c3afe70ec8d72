using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>The invariants under random input sequences, and that these come far enough to mean something.</summary>
public sealed class NonsenseTests
{
    private const int TicksPerRun = 1000;
    private const int Runs = 1300;

    private readonly long[] _faults = new long[32];
    private readonly long[] _phases = new long[8];
    private long _ticks;
    private long _cutouts;
    private long _presets;
    private long _putBacks;
    private long _resets;

    [Fact]
    public void Tick_AnyInputs_HoldsEveryInvariantAndThrowsNothing()
    {
        Gen<int> noise = Gen.OneOfConst(0, 0, 0, 1, 1, 3, 10, 50);
        Gen<int> kinds = Gen.Int[0, NonsenseSettings.Kinds - 1];
        Gen<int> milliseconds = Gen.Int[0, 5];

        Gen.Select(noise, kinds, Gen.Int[1, 16], Gen.Select(milliseconds, milliseconds), Gen.UInt.Array[TicksPerRun]).Sample(
            (noisePercent, kind, stageCount, times, numbers) =>
                Run(NonsenseSettings.Of(kind, stageCount, times.Item1, times.Item2), noisePercent, numbers),
            iter: Runs,
            threads: 2);

        string faults = string.Join(", ", Enumerable.Range(1, 24).Where(id => _faults[id] > 0).Select(id => $"{(FaultId)id} {_faults[id]}"));
        string phases = string.Join(", ", Enumerable.Range(0, 8).Select(phase => $"{(Phase)phase} {_phases[phase]}"));
        TestContext.Current.TestOutputHelper?.WriteLine($"{_ticks} ticks; entered: {phases}");
        TestContext.Current.TestOutputHelper?.WriteLine($"cutouts {_cutouts}, presets {_presets}, put back {_putBacks}, resets {_resets}; {_faults.Count(count => count > 0)} faults: {faults}");
        Assert.Equal((long)Runs * TicksPerRun, _ticks);
        for (Phase phase = Phase.Ready; phase <= Phase.Braking; phase++) Assert.InRange(_phases[(int)phase], 100, long.MaxValue);
        Assert.InRange(_cutouts, 4000, long.MaxValue);
        Assert.InRange(_presets, 100, long.MaxValue);
        Assert.InRange(_putBacks, 20, long.MaxValue);
        Assert.InRange(_resets, 1000, long.MaxValue);
        Assert.InRange(_faults.Count(count => count > 0), 20, 23);
    }

    [Fact]
    public void Tick_AnyInputsAndUnsoundSettings_NothingEverCloses() =>
        Gen.Select(Gen.OneOfConst(0, 1, 50), Gen.UInt.Array[100]).Sample(
            (noisePercent, numbers) =>
            {
                Settings settings = NonsenseSettings.Sound(3, 0, 0);
                Nonsense nonsense = new(settings, noisePercent);
                settings.VoltsLeft[1] = float.NaN;
                Controller controller = new(settings);
                Readings readings = new();
                Outputs outputs = new();
                foreach (uint number in numbers)
                {
                    nonsense.Next(number, readings, outputs);
                    controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);
                    Assert.False(outputs.CloseLine || outputs.CloseStages != 0 || outputs.CloseBrake || outputs.CloseField);
                    Assert.False(outputs.ReadyLamp || outputs.RunningLamp);
                    Assert.True(outputs.TrippedLamp);
                }
            },
            iter: 100,
            threads: 2);

    private void Run(Settings settings, int noisePercent, uint[] numbers)
    {
        Controller controller = new(settings);
        InvariantChecker checker = new(settings);
        Nonsense nonsense = new(settings, noisePercent);
        Readings readings = new();
        Outputs outputs = new();
        long now = 0;
        List<long> starts = [];
        for (int tick = 0; tick < numbers.Length; tick++)
        {
            Phase before = controller.Phase;
            int stagesBefore = outputs.CloseStages;
            nonsense.Next(numbers[tick], readings, outputs);
            controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);

            string? violation = checker.Violation(nonsense.ElapsedMicroseconds, readings, outputs, controller.Phase);
            Assert.True(violation == null, $"tick {tick}: {violation} ({before} to {controller.Phase}, {controller.Why.Reason}, {controller.Fault.Id})");
            now += Math.Clamp(nonsense.ElapsedMicroseconds, 0, Settings.LongestMicroseconds);
            if (before == Phase.Ready && controller.Phase is Phase.FieldBuilding or Phase.Accelerating) starts.Add(now);
            Count(before, controller, stagesBefore, outputs);
        }

        AssertStartsPerHour(settings.StartsPerHour, starts);
    }

    // The core counts in whole seconds, so that an hour may be one short.
    private static void AssertStartsPerHour(int mostStarts, List<long> starts)
    {
        for (int i = mostStarts; mostStarts > 0 && i < starts.Count; i++)
        {
            Assert.InRange(starts[i] - starts[i - mostStarts], 3_599_000_000, long.MaxValue);
        }
    }

    private void Count(Phase before, Controller controller, int stagesBefore, Outputs outputs)
    {
        Phase after = controller.Phase;
        Interlocked.Increment(ref _ticks);
        if (outputs.CloseStages > stagesBefore) Interlocked.Increment(ref outputs.CloseLine ? ref _cutouts : ref _presets);
        if (outputs.CloseStages < stagesBefore && outputs.CloseLine) Interlocked.Increment(ref _putBacks);
        if (before == after) return;
        Interlocked.Increment(ref _phases[(int)after]);
        if (after == Phase.Tripped) Interlocked.Increment(ref _faults[(int)controller.Fault.Id]);
        if (before == Phase.Tripped) Interlocked.Increment(ref _resets);
    }
}
