using StarterCtl.Firmware.Tests.Link;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>Calibration, noise check and memory over the link, with the whole control loop behind it.</summary>
public sealed class CalibrationLinkTests
{
    private const CalibrationChannel Amps = CalibrationChannel.ArmatureAmps;

    private readonly LinkRig _rig = new();
    private readonly CalibrationAnswer _answer = new();

    public CalibrationLinkTests()
    {
        // At rest for a second.
        _rig.Step(1001);
    }

    [Fact]
    public void Calibration_StepByStep_ShowsOldAndNewUntilItIsSaved()
    {
        _rig.Bench.Show(Amps, 2060);
        Assert.Equal((CalibrationState.Begun, CalibrationReason.Done), Ask(CalibrationStep.Begin));
        Assert.Equal((4095, 2048f, 0.5f), (_answer.FullScaleCounts, _answer.NominalOffsetCounts, _answer.NominalUnitsPerCount));
        Assert.Equal((CalibrationState.TakingZero, CalibrationReason.Done), Ask(CalibrationStep.TakeZero));
        _rig.Step(256);
        Assert.Equal((CalibrationState.ZeroTaken, CalibrationReason.Done), Ask(CalibrationStep.Read));
        Assert.Equal(2060f, _answer.NewOffsetCounts, 0.01f);
        Assert.Equal(2, _answer.SpreadCounts);
        _rig.Bench.Show(Amps, 2560);
        Ask(CalibrationStep.TakeSpan, 240f);
        _rig.Step(256);
        Assert.Equal((CalibrationState.Complete, CalibrationReason.Done), Ask(CalibrationStep.Read));
        Assert.Equal(0.48f, _answer.NewUnitsPerCount, 1e-4f);
        Assert.Equal((2048f, 0.5f), (_answer.InForceOffsetCounts, _answer.InForceUnitsPerCount));

        Assert.Equal((CalibrationState.Idle, CalibrationReason.Done), Ask(CalibrationStep.Save));
        Assert.Equal((0.48f, 2048f, 0.5f), (float.Round(_answer.InForceUnitsPerCount, 3), _answer.FormerOffsetCounts, _answer.FormerUnitsPerCount));
        Assert.Equal(StoreState.Sound, _rig.Bench.Store.State);
        Assert.Equal((CalibrationState.Idle, CalibrationReason.Done), Ask(CalibrationStep.Undo));
        Assert.Equal((2048f, 0.5f), (_answer.InForceOffsetCounts, _answer.InForceUnitsPerCount));
    }

    [Fact]
    public void Save_AskedTwiceByTheSameRequest_IsCarriedOutOnce()
    {
        Complete();
        Ask(CalibrationStep.Save);
        float former = _answer.FormerUnitsPerCount;

        _answer.Read(_rig.SendAgain());

        Assert.Equal((CalibrationReason.Done, former, 0.5f), (_answer.Reason, _answer.FormerUnitsPerCount, former));
    }

    [Fact]
    public void Zero_WhileTheLineIsClosed_IsRefused()
    {
        _rig.PermitGiven = true;
        _rig.Ask(MessageId.Start);
        _rig.Step(2);
        Assert.True(_rig.CloseLine);
        Ask(CalibrationStep.Begin);

        Assert.Equal((CalibrationState.Begun, CalibrationReason.NotAtRest), Ask(CalibrationStep.TakeZero));
        Assert.Equal(CalibrationReason.NotAtRest, Ask(CalibrationStep.Undo).Reason);
    }

    [Fact]
    public void Start_WhileAZeroIsTaken_EndsTheTaking()
    {
        Ask(CalibrationStep.Begin);
        Ask(CalibrationStep.TakeZero);
        _rig.PermitGiven = true;
        _rig.Ask(MessageId.Start);

        Assert.Equal((CalibrationState.Begun, CalibrationReason.NotAtRest), Ask(CalibrationStep.Read));
    }

    [Theory]
    [InlineData(CalibrationChannel.FieldAmps)]
    [InlineData(CalibrationChannel.Count)]
    [InlineData((CalibrationChannel)255)]
    public void Channel_ThatIsNotThere_IsRefused(CalibrationChannel channel)
    {
        Assert.Equal((CalibrationState.Idle, CalibrationReason.NoSuchChannel), Ask(CalibrationStep.Begin, channel: channel));
        Assert.Equal(0, _answer.FullScaleCounts);
    }

    [Fact]
    public void Step_ForAnotherChannelThanTheOneBegun_IsRefused()
    {
        Ask(CalibrationStep.Begin);

        Assert.Equal((CalibrationState.Idle, CalibrationReason.NotBegun), Ask(CalibrationStep.TakeZero, channel: CalibrationChannel.SupplyVolts));
        Assert.Equal((CalibrationState.Begun, CalibrationReason.NoSuchStep), Ask((CalibrationStep)7));
    }

    [Fact]
    public void Abort_DropsWhatWasTaken()
    {
        Complete();
        Assert.Equal((CalibrationState.Idle, CalibrationReason.Done), Ask(CalibrationStep.Abort));

        Assert.Equal(CalibrationReason.NotBegun, Ask(CalibrationStep.Save).Reason);
    }

    [Fact]
    public void Noise_OfARest_IsWhatTheChannelShows()
    {
        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.BeginNoise)));
        _rig.Step(300);
        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.EndNoise)));
        NoiseAnswer noise = new();

        new NoiseRequest { Channel = Amps, Situation = NoiseSituation.Rest }.Write(_rig.Request);
        noise.Read(_rig.Ask());

        // The rig's channels go round over three counts about 2058.
        Assert.InRange(noise.Count, 300, 320);
        Assert.Equal((Amps, NoiseSituation.Rest, false, 2057, 2059, 2, 4095), (noise.Channel, noise.Situation, noise.IsRecording, noise.Lowest, noise.Highest, noise.LargestStep, noise.FullScaleCounts));
        Assert.Equal(2058f, noise.Mean, 0.02f);
        Assert.Equal(2f / 3f, noise.Variance, 0.01f);
    }

    [Theory]
    [InlineData(CalibrationChannel.FieldAmps, NoiseSituation.Rest)]
    [InlineData((CalibrationChannel)4, NoiseSituation.Rest)]
    [InlineData(Amps, NoiseSituation.None)]
    public void Noise_OfWhatIsNotThere_IsOutOfRange(CalibrationChannel channel, NoiseSituation situation)
    {
        new NoiseRequest { Channel = channel, Situation = situation }.Write(_rig.Request);

        Assert.Equal(LinkReason.OutOfRange, _rig.Reason(_rig.Ask()));
    }

    [Fact]
    public void Memory_SaysWhatIsThereAndWhy()
    {
        MemoryAnswer memory = new();

        memory.Read(_rig.Ask(MessageId.ReadMemory));

        Assert.Equal((StoreState.Blank, StoreState.Blank), (memory.SettingsState, memory.CalibrationState));
        Assert.Equal((ResetCause.Watchdog, ResetCause.Unknown, 1, StartLockReason.None), (memory.ResetCause, memory.FormerResetCause, memory.WatchdogResets, memory.StartLock));
    }

    [Fact]
    public void BoardWithoutCalibration_KnowsNoneOfThese()
    {
        Assert.Equal(LinkCapabilities.Telemetry | LinkCapabilities.Log | LinkCapabilities.Settings | LinkCapabilities.Commands, Capabilities(false));
        Assert.Equal(LinkCapabilities.Calibration, Capabilities(true) & LinkCapabilities.Calibration);
    }

    private LinkCapabilities Capabilities(bool canCalibrate)
    {
        Frame request = new();
        request.Begin(MessageId.AskHello, 0);
        LinkAnswers answers = new(LinkRig.Identity(), canCalibrate, false);
        answers.Hello(request, _rig.Controller, _rig, false);
        HelloAnswer hello = new();
        hello.Read(answers.Frame);
        return hello.Capabilities;
    }

    private void Complete()
    {
        Ask(CalibrationStep.Begin);
        Ask(CalibrationStep.TakeZero);
        _rig.Step(256);
        _rig.Bench.Show(Amps, 3058);
        Ask(CalibrationStep.TakeSpan, 480f);
        _rig.Step(256);
        Assert.Equal(CalibrationState.Complete, Ask(CalibrationStep.Read).State);
    }

    private (CalibrationState State, CalibrationReason Reason) Ask(CalibrationStep step, float trueUnits = 0f, CalibrationChannel channel = Amps)
    {
        new CalibrationRequest { Channel = channel, Step = step, TrueUnits = trueUnits }.Write(_rig.Request);
        _answer.Read(_rig.Ask());
        Assert.Equal(channel, _answer.Channel);
        return (_answer.State, _answer.Reason);
    }
}
