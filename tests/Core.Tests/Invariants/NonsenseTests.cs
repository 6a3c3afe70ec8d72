using System.Threading;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>The invariants under random input sequences, and that these come far enough to mean something.</summary>
public sealed class NonsenseTests
{
    private const int TicksPerRun = 1000;

    private long _ticks;
    private long _starts;
    private long _cutouts;
    private long _completed;
    private long _trips;
    private long _resets;

    [Fact]
    public void Tick_AnyInputs_HoldsEveryInvariantAndThrowsNothing()
    {
        Gen<int> noise = Gen.OneOfConst(0, 0, 1, 1, 3, 10, 50);
        Gen<int> stages = Gen.Int[1, 16];
        Gen<int> milliseconds = Gen.Int[0, 5];

        Gen.Select(noise, stages, milliseconds, milliseconds, Gen.UInt.Array[TicksPerRun]).Sample(
            (noisePercent, stageCount, confirm, dwell, numbers) => Run(Sound(stageCount, confirm, dwell), noisePercent, numbers),
            iter: 400,
            threads: 2);

        Assert.Equal(400 * TicksPerRun, _ticks);
        Assert.InRange(_starts, 4000, long.MaxValue);
        Assert.InRange(_cutouts, 4000, long.MaxValue);
        Assert.InRange(_completed, 100, long.MaxValue);
        Assert.InRange(_trips, 1000, long.MaxValue);
        Assert.InRange(_resets, 1000, long.MaxValue);
    }

    [Fact]
    public void Tick_AnyInputsAndUnsoundSettings_NothingEverCloses() =>
        Gen.Select(Gen.OneOfConst(0, 1, 50), Gen.UInt.Array[100]).Sample(
            (noisePercent, numbers) =>
            {
                Settings settings = Sound(3, 0, 0);
                Nonsense nonsense = new(settings, noisePercent);
                settings.VoltsLeft[1] = float.NaN;
                Controller controller = new(settings);
                Readings readings = new();
                Outputs outputs = new();
                foreach (uint number in numbers)
                {
                    nonsense.Next(number, readings, outputs);
                    controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);
                    Assert.False(outputs.CloseLine || outputs.CloseStages != 0 || outputs.ReadyLamp || outputs.RunningLamp);
                    Assert.True(outputs.TrippedLamp);
                }
            },
            iter: 100,
            threads: 2);

    private void Run(Settings settings, int noisePercent, uint[] numbers)
    {
        Assert.Equal(SettingId.None, settings.FirstProblem());
        Controller controller = new(settings);
        InvariantChecker checker = new(settings);
        Nonsense nonsense = new(settings, noisePercent);
        Readings readings = new();
        Outputs outputs = new();
        for (int tick = 0; tick < numbers.Length; tick++)
        {
            Phase before = controller.Phase;
            int stagesBefore = outputs.CloseStages;
            nonsense.Next(numbers[tick], readings, outputs);
            controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);

            string? violation = checker.Violation(nonsense.ElapsedMicroseconds, readings, outputs);
            Assert.True(violation == null, $"tick {tick}: {violation} ({before} to {controller.Phase}, {controller.Why.Reason})");
            Count(before, controller.Phase, outputs.CloseStages > stagesBefore);
        }
    }

    private void Count(Phase before, Phase after, bool cutOut)
    {
        Interlocked.Increment(ref _ticks);
        if (cutOut) Interlocked.Increment(ref _cutouts);
        if (before == after) return;
        if (after == Phase.Accelerating) Interlocked.Increment(ref _starts);
        if (after == Phase.Running) Interlocked.Increment(ref _completed);
        if (after == Phase.Tripped) Interlocked.Increment(ref _trips);
        if (before == Phase.Tripped) Interlocked.Increment(ref _resets);
    }

    private static Settings Sound(int stageCount, int confirmMilliseconds, int dwellMilliseconds)
    {
        Settings settings = Bench.Chk01();
        settings.StageCount = stageCount;
        settings.ConfirmMicroseconds = confirmMilliseconds * Bench.Millisecond;
        settings.MinimumDwellMicroseconds = dwellMilliseconds * Bench.Millisecond;
        settings.BrushDropVolts = confirmMilliseconds;
        settings.LockoutAmps = 750f;
        for (int i = 0; i <= stageCount; i++) settings.StageOhms[i] = 0.4f - 0.02f * i;
        for (int i = 0; i < stageCount; i++) settings.VoltsLeft[i] = 125f - 6f * i;
        return settings;
    }
}
