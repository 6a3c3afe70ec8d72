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

    [Fact]
    public void List_EveryRefusal_HasItsOwnWordsInTheOrderOfImportance()
    {
        Refusal[] bits = [.. Enum.GetValues<Refusal>().Where(bit => bit != Refusal.None)];

        Assert.Equal(bits.Length, RefusalText.List(bits.Aggregate((all, bit) => all | bit)).Replace("turns, and", "turns and", StringComparison.Ordinal).Split(", ").Length);
        Assert.All(bits, bit => Assert.NotEqual("", RefusalText.List(bit)));
        Assert.Equal(
            "stop is pressed, a permissive input is not given, the line contactor is not proven open, the supply is low, the motor has not cooled down yet, as many starts as are permitted in an hour have been made, start has been held since before the controller was ready",
            RefusalText.List(Refusal.StartHeld | Refusal.TooManyStarts | Refusal.MotorTooHot | Refusal.SupplyLow | Refusal.LineNotOpen | Refusal.PermissiveMissing | Refusal.StopPressed));
    }

    [Theory]
    [InlineData(FaultId.ContactDidNotClose, 0, 0, "line contactor")]
    [InlineData(FaultId.ContactDidNotClose, 3, 0, "contactor of stage 3")]
    [InlineData(FaultId.ContactDidNotOpen, 101, 0, "field contactor")]
    [InlineData(FaultId.ContactDidNotOpen, 102, 0, "brake contactor")]
    [InlineData(FaultId.FieldLost, 0.25, 0.6, "field current 0.25 A, at least 0.6 A")]
    [InlineData(FaultId.SupplyLow, 150, 170, "supply 150 V, at least 170 V")]
    [InlineData(FaultId.Overspeed, 157.0796, 150, "1500 r/min, at most 1432 r/min")]
    [InlineData(FaultId.PermissiveLost, 1, 7, "input 2, 3")]
    [InlineData(FaultId.SettingsInvalid, 36, 0, "setting field-build-time")]
    [InlineData(FaultId.SectionDrifted, 50, 75, "50 A instead of 75 A")]
    public void Measured_KnownFault_ReadsAsAgreed(FaultId id, float measured, float limit, string expected) =>
        Assert.Equal(expected, FaultText.Measured(new FaultEntry(id, 1, measured, limit)));

    [Fact]
    public void Measured_ReadingThatCannotBeTrue_NamesTheChannelAndTheBound()
    {
        FaultEntry fault = new(FaultId.ReadingInvalid, 1, -60, -44) { Channel = Channel.Supply };

        Assert.Equal("supply voltage reads -60 V, least believed -44 V", FaultText.Measured(fault));
        Assert.Equal("field current reads NaN A, largest believed 100 A", FaultText.Measured(fault with { Value = float.NaN, Limit = 100, Channel = Channel.FieldCurrent }));
    }

    [Fact]
    public void Measured_EveryFault_SaysANumberOrNeedsNone()
    {
        FaultId[] silent = [.. Enum.GetValues<FaultId>().Where(id => FaultText.Measured(new FaultEntry(id, 1, 2, 3)).Length == 0)];

        Assert.Equal([FaultId.None, FaultId.EmergencyStop, FaultId.SpeedSignalLost], silent);
    }

    [Fact]
    public void Sentence_EventWithEveryPart_SaysWhatHappens()
    {
        TimelineEntry entry = Entry(Reason.AllStagesCutOut, 1, 2) with
        {
            Event = new RunEvent(5, null, null, null)
            {
                FieldSupplyVolts = 80,
                FieldOpen = true,
                SpeedSignal = SpeedSignalState.Stuck,
                ShaftLocked = true,
                ContactFault = new ContactFault(ContactName.Stage, ContactFaultKind.Welds, 2),
                Permissives = 3,
                CurrentSensorGain = 1.1,
                ResistorCelsius = 320,
            },
        };

        Assert.Equal(
            "event: the field's supply becomes 80 V, the field circuit breaks, the speed signal stays at its last value, the shaft jams, the contactor of stage 2 welds, the first 2 permissive inputs are given from now on, the current sensor reads 1.1 times what flows, the starting resistor reads 320 degC",
            ReasonText.Sentence(entry));
    }

    private static TimelineEntry Entry(Reason reason, float quantity, float limit) =>
        new(1, Phase.Accelerating, 2, reason, quantity, limit, 0.04, 100, null);
}
