using System;
using System.Linq;
using StarterCtl.App.Reporting;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

public sealed class WordsTests
{
    [Fact]
    public void Sentence_EveryReason_HasItsOwnWords()
    {
        string[] sentences = [.. Enum.GetValues<Reason>().Select(reason => ReasonText.Sentence(Entry(reason, 1, 2)))];

        Assert.Equal(sentences.Length, sentences.Distinct().Count());
        Assert.All(Enum.GetNames<Reason>(), name => Assert.DoesNotContain(sentences, sentence => sentence == name));
    }

    [Theory]
    [InlineData(Reason.BackEmfBelowThreshold, 88.1f, 144.5f, "stage 2 waits: back-EMF 88.1 V of 144.5 V")]
    [InlineData(Reason.StageCutOut, 144.6f, 144.5f, "stage 2 is cut out: back-EMF 144.6 V has passed 144.5 V")]
    [InlineData(Reason.CurrentAboveLockout, 120f, 110f, "stage 2 waits: current 120 A is above the lockout of 110 A")]
    [InlineData(Reason.StartRefused, 5f, 0f, "start is refused: stop is pressed, a stage contactor is not proven open")]
    [InlineData(Reason.FaultLatched, 3f, 0f, "tripped: overcurrent")]
    public void Sentence_KnownNumbers_ReadsAsAgreed(Reason reason, float quantity, float limit, string expected) =>
        Assert.Equal(expected, ReasonText.Sentence(Entry(reason, quantity, limit)));

    [Fact]
    public void Sentence_Event_SaysWhatHappens()
    {
        TimelineEntry entry = Entry(Reason.AllStagesCutOut, 1, 2) with { Event = new RunEvent(5, 85, 200, OperatorCommand.Stop) };

        Assert.Equal("event: the load's constant torque becomes 85 N m, the supply becomes 200 V, the operator presses stop", ReasonText.Sentence(entry));
    }

    [Theory]
    [InlineData(FaultId.ContactDidNotOpen, true)]
    [InlineData(FaultId.ContactDidNotClose, false)]
    public void Report_FaultThatMayLeaveTheMotorLive_SaysSo(FaultId id, bool isSaid)
    {
        StartStudy study = Studies.LineShaft.Value;
        StartStudy tripped = study with { Result = study.Result with { Faults = [new FaultEntry(id, 1, 2, 0)] } };

        string html = StartReport.Html(tripped, LoadStepScene.Of(tripped));

        Assert.Equal(isSaid, html.Contains("The motor may still be live.", StringComparison.Ordinal));
        Assert.Contains("contactor of stage 2", html, StringComparison.Ordinal);
    }

    private static TimelineEntry Entry(Reason reason, float quantity, float limit) =>
        new(1, Phase.Accelerating, 2, reason, quantity, limit, 0.04, 100, null);
}
