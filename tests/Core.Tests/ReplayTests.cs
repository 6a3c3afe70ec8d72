using System;
using StarterCtl.Core.Tests.Invariants;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// One pseudo-random input, one answer: the same hash in Debug and Release, on every processor, and on the board. It
/// changes only when the controller's behaviour changes; then the new one is written here with that change.
/// </summary>
public sealed class ReplayTests
{
    private const int TicksEach = 500_000;
    private const uint Expected = 0x43390ACF;

    [Fact]
    public void Tick_MillionTicksOfRecordedInput_GiveThePinnedHash() =>
        Assert.Equal($"0x{Expected:X8}", $"0x{Replay(1):X8}");

    [Fact]
    public void Tick_SameInputTwice_GivesTheSameHash() =>
        Assert.Equal(Replay(2), Replay(2));

    [Fact]
    public void Tick_OtherInput_GivesAnotherHash() =>
        Assert.NotEqual(Replay(1), Replay(2));

    // Half with the plain starter, half with everything that there is switched on.
    private static uint Replay(uint seed)
    {
        Settings plain = Bench.Chk01();
        plain.BrushDropVolts = 1.5f;
        plain.LockoutAmps = 750f;
        plain.ConfirmMicroseconds = 2 * Bench.Millisecond;
        plain.MinimumDwellMicroseconds = 3 * Bench.Millisecond;
        Hash hash = new();
        Replay(seed, plain, hash);
        Replay(seed, BootCourse.Settings(), hash);
        return hash.Sum;
    }

    private static void Replay(uint seed, Settings settings, Hash hash)
    {
        Controller controller = new(settings);
        Nonsense nonsense = new(settings, 1);
        Readings readings = new();
        Outputs outputs = new();
        uint number = seed;
        for (int tick = 0; tick < TicksEach; tick++)
        {
            number = unchecked(number * 1664525u + 1013904223u);
            nonsense.Next(number, readings, outputs);
            controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);

            int lamps = (outputs.ReadyLamp ? 1 : 0) | (outputs.RunningLamp ? 2 : 0) | (outputs.TrippedLamp ? 4 : 0);
            hash.Add((outputs.CloseLine ? 1 : 0) | (outputs.CloseBrake ? 2 : 0) | (outputs.CloseField ? 4 : 0));
            hash.Add(outputs.CloseStages);
            hash.Add(lamps);
            hash.Add((int)controller.Phase);
            hash.Add(controller.Stage);
            hash.Add((int)controller.Why.Reason);
            hash.Add(BitConverter.SingleToInt32Bits(controller.Why.Quantity));
            hash.Add(BitConverter.SingleToInt32Bits(controller.Why.Limit));
            hash.Add(controller.Why.MicrosecondsLeft);
            hash.Add((int)controller.Fault.Id);
        }
    }

    /// <summary>FNV-1a over 32 bits, byte by byte from the lowest.</summary>
    private sealed class Hash
    {
        internal uint Sum { get; private set; } = 2166136261u;

        internal void Add(int word)
        {
            for (int shift = 0; shift < 32; shift += 8) Sum = unchecked((Sum ^ (uint)((word >> shift) & 0xFF)) * 16777619u);
        }
    }
}
