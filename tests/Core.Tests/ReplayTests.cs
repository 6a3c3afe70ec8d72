using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// One pseudo-random input, one answer: the same hash in Debug and Release, on every processor, and on the board. It
/// changes only when the controller's behaviour changes; then the new one is written here with that change.
/// </summary>
public sealed class ReplayTests
{
    [Fact]
    public void Tick_MillionTicksOfRecordedInput_GiveThePinnedHash() =>
        Assert.Equal($"0x{ReplayCourse.Expected:X8}", $"0x{ReplayCourse.Run(1):X8}");

    [Fact]
    public void Tick_SameInputTwice_GivesTheSameHash() =>
        Assert.Equal(ReplayCourse.Run(2), ReplayCourse.Run(2));

    [Fact]
    public void Tick_OtherInput_GivesAnotherHash() =>
        Assert.NotEqual(ReplayCourse.Expected, ReplayCourse.Run(2));
}
