using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>Every reason of a board's lock has its words at the desk.</summary>
public sealed class BoardLockTests
{
    public static TheoryData<PowerUpProblem> Problems => [.. Enum.GetValues<PowerUpProblem>()];

    public static TheoryData<BoardProblem> Wirings => [.. Enum.GetValues<BoardProblem>().Where(problem => problem != BoardProblem.None)];

    [Theory]
    [MemberData(nameof(Problems))]
    public void Sentence_EveryProblem_HasItsOwn(PowerUpProblem problem)
    {
        string sentence = Locked(problem).Sentence;

        Assert.DoesNotContain("does not know", problem == PowerUpProblem.WiringRefused ? "" : sentence, StringComparison.Ordinal);
        Assert.Single(Enum.GetValues<PowerUpProblem>(), other => Locked(other).Sentence == sentence);
    }

    [Theory]
    [MemberData(nameof(Wirings))]
    public void Sentence_EveryWiring_HasItsOwn(BoardProblem wiring)
    {
        string sentence = Refused(wiring).Sentence;

        Assert.StartsWith("the wiring is refused: ", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("does not know", sentence, StringComparison.Ordinal);
        Assert.Single(Enum.GetValues<BoardProblem>(), other => Refused(other).Sentence == sentence);
    }

    [Theory]
    [InlineData(PowerUpProblem.CurrentFlows, 37.5f, "37.5 A flow in the armature")]
    [InlineData(PowerUpProblem.StageNotOpen, 3f, "the contactor of stage 3 is not proven open")]
    [InlineData(PowerUpProblem.SettingsUnsound, (int)SettingId.StageOhms, "the setting StageOhms failed its check")]
    [InlineData(PowerUpProblem.ReadingUnusable, (int)Channel.Supply, "the reading of Supply is not a number: wire open or shorted")]
    [InlineData((PowerUpProblem)99, 0f, "reason 99, which this program does not know")]
    public void Sentence_WithWhatWasFound(PowerUpProblem problem, float value, string expected) =>
        Assert.Equal(expected, new BoardLock(problem, value, BoardProblem.None, 0, 0, 0f, 0f).Sentence);

    [Fact]
    public void Sentence_ARangeThatCannotShowTheTrip_SaysBothNumbers() =>
        Assert.Equal(
            "the wiring is refused: ArmatureAmps ends at 40 and must show 75",
            new BoardLock(PowerUpProblem.WiringRefused, 6f, BoardProblem.RangeTooSmall, PinRole.ArmatureAmps, 0, 40f, 75f).Sentence);

    private static BoardLock Locked(PowerUpProblem problem) => new(problem, 1f, BoardProblem.None, 0, 0, 0f, 0f);

    private static BoardLock Refused(BoardProblem wiring) => new(PowerUpProblem.WiringRefused, (float)wiring, wiring, PinRole.LineCoil, PinRole.ReadyLamp, 1f, 2f);
}
