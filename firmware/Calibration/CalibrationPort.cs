using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Calibration, noise check and the state of the memory behind the link. Like the link, it commands no contact.</summary>
public sealed class CalibrationPort
{
    private readonly CalibratedChannel[] _channels;
    private readonly MemoryReport _memory;
    private readonly CalibrationSession _session;
    private readonly NoiseCheck _noise;
    private readonly CoilWatch _coils = new CoilWatch();
    private readonly CalibrationRequest _request = new CalibrationRequest();
    private readonly NoiseRequest _noiseRequest = new NoiseRequest();
    private readonly CalibrationAnswer _answer = new CalibrationAnswer();
    private readonly NoiseAnswer _noiseAnswer = new NoiseAnswer();
    private readonly MemoryAnswer _memoryAnswer = new MemoryAnswer();

    /// <summary>Builds the port.</summary>
    /// <param name="channels">One for each <see cref="CalibrationChannel"/>.</param>
    /// <param name="store">Where their calibration is kept.</param>
    /// <param name="memory">What the board keeps.</param>
    public CalibrationPort(CalibratedChannel[] channels, CalibrationStore store, MemoryReport memory)
    {
        _channels = channels;
        _memory = memory;
        _session = new CalibrationSession(channels, store);
        _noise = new NoiseCheck(channels);
    }

    /// <summary>Takes a control period over. Call behind the tick, with the channels' counts of the same period.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call.</param>
    /// <param name="readings">What the controller was given.</param>
    /// <param name="outputs">What it commanded.</param>
    public void Step(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        _coils.Step(elapsedMicroseconds, readings, outputs);
        _session.Step(_coils.IsAtRest);
        _noise.Step(_coils.Situation);
    }

    /// <summary>Answers a request of known length, if it is one of these.</summary>
    /// <returns>False if it is none; then nothing was done.</returns>
    public bool TryAnswer(Frame request, LinkAnswers answers)
    {
        switch (request.Id)
        {
            case MessageId.Calibrate:
                Calibrate(request, answers);
                return true;
            case MessageId.BeginNoise:
                _noise.Begin();
                answers.Ack(request, LinkReason.Done, SettingId.None, SettingProblem.None);
                return true;
            case MessageId.EndNoise:
                _noise.End();
                answers.Ack(request, LinkReason.Done, SettingId.None, SettingProblem.None);
                return true;
            case MessageId.ReadNoise:
                ReadNoise(request, answers);
                return true;
            case MessageId.ReadMemory:
                _memory.Fill(_memoryAnswer);
                _memoryAnswer.RequestSequence = request.Sequence;
                _memoryAnswer.Write(answers.Frame);
                return true;
            default:
                return false;
        }
    }

    private void Calibrate(Frame request, LinkAnswers answers)
    {
        _request.Read(request);
        CalibrationChannel channel = _request.Channel;
        CalibrationReason reason = IsFitted(channel) ? Act(channel) : CalibrationReason.NoSuchChannel;
        Say(request, answers, channel, reason);
    }

    private CalibrationReason Act(CalibrationChannel channel)
    {
        bool isOfSession = channel == _session.Channel;
        switch (_request.Step)
        {
            case CalibrationStep.Read: return isOfSession ? _session.Reason : CalibrationReason.Done;
            case CalibrationStep.Begin: return _session.Begin(channel);
            case CalibrationStep.Undo: return _session.Undo(channel, _coils.IsAtRest);
            case CalibrationStep.Abort:
                _session.Abort();
                return CalibrationReason.Done;
            // A step for another channel than the one begun is one for none.
            default: return isOfSession ? ActOnSession() : CalibrationReason.NotBegun;
        }
    }

    private CalibrationReason ActOnSession()
    {
        switch (_request.Step)
        {
            case CalibrationStep.TakeZero: return _session.TakeZero(_coils.IsAtRest);
            case CalibrationStep.TakeSpan: return _session.TakeSpan(_request.TrueUnits);
            case CalibrationStep.Save: return _session.Save(_coils.IsAtRest);
            default: return CalibrationReason.NoSuchStep;
        }
    }

    private bool IsFitted(CalibrationChannel channel) => (int)channel < _channels.Length && _channels[(int)channel].IsFitted;

    private void Say(Frame request, LinkAnswers answers, CalibrationChannel channel, CalibrationReason reason)
    {
        bool isOfSession = channel == _session.Channel && channel != CalibrationChannel.Count;
        bool hasNew = isOfSession && _session.State >= CalibrationState.ZeroTaken;
        _answer.RequestSequence = request.Sequence;
        _answer.Channel = channel;
        _answer.State = isOfSession ? _session.State : CalibrationState.Idle;
        _answer.Reason = reason;
        _answer.NewOffsetCounts = hasNew ? _session.New.OffsetCounts : 0f;
        _answer.NewUnitsPerCount = hasNew ? _session.New.UnitsPerCount : 0f;
        _answer.MeanCounts = isOfSession ? _session.MeanCounts : 0f;
        _answer.SpreadCounts = isOfSession ? _session.SpreadCounts : 0;
        SayPairs((int)channel < _channels.Length ? _channels[(int)channel] : null);
        _answer.Write(answers.Frame);
    }

    private void SayPairs(CalibratedChannel? channel)
    {
        _answer.FullScaleCounts = channel == null ? 0 : channel.FullScaleCounts;
        _answer.InForceOffsetCounts = channel == null ? 0f : channel.InForce.OffsetCounts;
        _answer.InForceUnitsPerCount = channel == null ? 0f : channel.InForce.UnitsPerCount;
        _answer.FormerOffsetCounts = channel == null ? 0f : channel.Former.OffsetCounts;
        _answer.FormerUnitsPerCount = channel == null ? 0f : channel.Former.UnitsPerCount;
        _answer.NominalOffsetCounts = channel == null ? 0f : channel.Nominal.OffsetCounts;
        _answer.NominalUnitsPerCount = channel == null ? 0f : channel.Nominal.UnitsPerCount;
    }

    private void ReadNoise(Frame request, LinkAnswers answers)
    {
        _noiseRequest.Read(request);
        if (!IsFitted(_noiseRequest.Channel) || _noiseRequest.Situation >= NoiseSituation.None)
        {
            answers.Ack(request, LinkReason.OutOfRange, SettingId.None, SettingProblem.None);
            return;
        }

        NoiseFigures figures = _noise.Figures(_noiseRequest.Channel, _noiseRequest.Situation);
        _noiseAnswer.RequestSequence = request.Sequence;
        _noiseAnswer.Channel = _noiseRequest.Channel;
        _noiseAnswer.Situation = _noiseRequest.Situation;
        _noiseAnswer.IsRecording = _noise.IsRecording;
        _noiseAnswer.Count = figures.Count;
        _noiseAnswer.Lowest = figures.Lowest;
        _noiseAnswer.Highest = figures.Highest;
        _noiseAnswer.Mean = figures.Mean;
        _noiseAnswer.Variance = figures.Variance;
        _noiseAnswer.LargestStep = figures.LargestStep;
        _noiseAnswer.FullScaleCounts = _channels[(int)_noiseRequest.Channel].FullScaleCounts;
        _noiseAnswer.Write(answers.Frame);
    }
}
