using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>Samples at the rate that was asked for, and a count of those that the line had no time for.</summary>
public sealed class TelemetryTests
{
    private readonly LinkRig _rig = new();
    private readonly TelemetryMessage _sample = new();

    [Theory]
    [InlineData(1_000)]
    [InlineData(60_000_000)]
    [InlineData(0)]
    public void SetTelemetry_PeriodInRange_IsTaken(int periodMicroseconds) => Assert.Equal(LinkReason.Done, Set(periodMicroseconds));

    [Theory]
    [InlineData(999)]
    [InlineData(60_000_001)]
    [InlineData(-1)]
    [InlineData(int.MinValue)]
    public void SetTelemetry_PeriodOutOfRange_IsRefused(int periodMicroseconds) => Assert.Equal(LinkReason.OutOfRange, Set(periodMicroseconds));

    [Fact]
    public void Samples_Every10Milliseconds_Are100InASecond()
    {
        Set(10_000);
        int before = _rig.TelemetryFrames;

        // Four periods more until the last is over the line: 54 bytes in steps of 16.
        _rig.Step(1004);

        Assert.Equal(100, _rig.TelemetryFrames - before);
        Assert.Equal(0, Sample().DroppedSamples);
    }

    [Fact]
    public void Clock_2500MicrosecondsInPeriodsOf1000_HoldsTheRate()
    {
        TelemetryClock clock = new();
        clock.TrySet(2_500);
        int due = 0;
        for (int i = 0; i < 1000; i++) due += clock.IsDue(1000) ? 1 : 0;

        Assert.Equal(400, due);
    }

    [Fact]
    public void Clock_PeriodsMissed_AreNotMadeUpFor()
    {
        TelemetryClock clock = new();
        clock.TrySet(2_500);

        Assert.True(clock.IsDue(10_000));
        Assert.False(clock.IsDue(1_000));
    }

    [Fact]
    public void Samples_PeriodZero_Stop()
    {
        Set(10_000);
        Set(0);
        _rig.Step(10);
        int before = _rig.TelemetryFrames;

        _rig.Step(1000);

        Assert.Equal(before, _rig.TelemetryFrames);
    }

    [Fact]
    public void Samples_LineSlowerThanTheRate_AreDroppedAndCounted()
    {
        // 54 bytes in steps of 2 take 27 periods: of 27 samples that are due, one goes.
        Set(1_000);
        _rig.RoomBytes = 2;
        _rig.Step(27 * 40);

        Assert.InRange(_rig.TelemetryFrames, 39, 41);
        Assert.InRange(Sample().DroppedSamples, 26 * 38, 26 * 40);
    }

    /// <summary>An answer and a sample of one period go one behind the other: 30 and 54 bytes at most.</summary>
    [Fact]
    public void Samples_EveryPeriodOnALineThatTakesThem_NoneIsLeftOutBesideAnswers()
    {
        _rig.RoomBytes = 256;
        Set(1_000);
        int before = _rig.TelemetryFrames;

        for (int i = 0; i < 200; i++) _rig.Ask(MessageId.AskHello);
        _rig.Step(5);

        Assert.InRange(_rig.TelemetryFrames - before, 205, int.MaxValue);
        Assert.Equal(0, Sample().DroppedSamples);
    }

    [Fact]
    public void Sent_InOnePeriod_NoMoreThanTheLineTakes()
    {
        _rig.RoomBytes = 4;
        int sent = 0;
        _rig.Wire = _ => sent++;
        // Always due: the rest of one sample and the beginning of the next fall into one period.
        Set(1_000);

        for (int i = 0; i < 300; i++)
        {
            sent = 0;
            _rig.Step();
            Assert.InRange(sent, 0, 4);
        }
    }

    [Fact]
    public void Samples_LineBlocked_BlockNothingElse()
    {
        Set(1_000);
        _rig.RoomBytes = 0;
        _rig.StartHeld = false;
        _rig.Port.Buttons.PressStart();
        _rig.Step(2);

        Assert.True(_rig.CloseLine);
    }

    [Fact]
    public void Sample_WhileRunning_IsWhatTheControllerHas()
    {
        _rig.Step();
        _rig.Port.Buttons.PressStart();
        _rig.SpeedRadPerSec = 96f;
        _rig.Step(20);
        Set(10_000);
        _rig.Step(20);

        TelemetryMessage sample = Sample();

        Assert.Equal((Phase.Running, 4, FaultId.None), (sample.Phase, sample.Stage, sample.Fault));
        Assert.Equal((_rig.Controller.Why.Reason, _rig.Controller.Why.Quantity, _rig.Controller.Why.Limit), (sample.Reason, sample.ReasonQuantity, sample.ReasonLimit));
        Assert.Equal((250f, 0f, 96f, 240f), (sample.SupplyVolts, sample.ArmatureAmps, sample.SpeedRadPerSec, sample.BackEmfVolts));
        Assert.Equal((7, 7), (sample.CloseStages, sample.StagesClosed));
        TelemetrySwitches on = TelemetrySwitches.CloseLine | TelemetrySwitches.LineClosed | TelemetrySwitches.SpeedValid;
        Assert.Equal(on, sample.Switches & ~TelemetrySwitches.ResistiveValid);
        Assert.Equal(_rig.Controller.Estimate.ResistiveBackEmfVolts, sample.ResistiveBackEmfVolts);
    }

    [Fact]
    public void Switches_EachCoilContactAndMark_HasItsBit()
    {
        Readings readings = new() { LineClosed = true, FieldClosed = true };
        Outputs outputs = new() { CloseBrake = true };
        Readings others = new() { BrakeClosed = true, SpeedValid = true };
        Outputs otherOutputs = new() { CloseLine = true, CloseField = true };

        Assert.Equal((TelemetrySwitches)(2 | 32 | 4), Switches(readings, outputs));
        Assert.Equal((TelemetrySwitches)(8 | 64 | 1 | 16), Switches(others, otherOutputs));
    }

    [Fact]
    public void Time_BetweenSamples_IsTheBoardsOwn()
    {
        Set(20_000);
        _rig.Step(30);
        int first = Sample().TimeMicroseconds;
        _rig.Step(20);

        Assert.Equal(20_000, Sample().TimeMicroseconds - first);
    }

    private LinkReason Set(int periodMicroseconds)
    {
        new TelemetryRequest { PeriodMicroseconds = periodMicroseconds }.Write(_rig.Request);
        return _rig.Reason(_rig.Ask());
    }

    private TelemetryMessage Sample()
    {
        Assert.Equal(MessageId.Telemetry, _rig.Answer.Id);
        _sample.Read(_rig.Answer);
        return _sample;
    }

    private TelemetrySwitches Switches(Readings readings, Outputs outputs)
    {
        Frame frame = new();
        new TelemetrySampler().Write(frame, 0, _rig.Controller, readings, outputs);
        _sample.Read(frame);
        return _sample.Switches;
    }
}
