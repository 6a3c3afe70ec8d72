using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// The board's end of the serial link. Called once before and once behind each tick; reads, acts on one request at most, and
/// sends, all of it bounded, without waiting and without allocating. It commands no contact: what is asked over the link
/// becomes presses of the controller's own inputs.
/// </summary>
public sealed class LinkPort
{
    /// <summary>Version of this protocol.</summary>
    public const int ProtocolVersion = 1;

    /// <summary>Most bytes read in one control period: each of them is looked at.</summary>
    public const int MostBytesReadPerStep = 16;

    /// <summary>Most bytes sent in one control period, those of an answer and a sample; fewer where the line takes fewer.</summary>
    public const int MostBytesSentPerStep = 2 * Frame.MostLineBytes;

    private readonly ISerialLine _line;
    private readonly ISettingsTarget _settings;
    private readonly ILocalPermit _permit;
    private readonly CalibrationPort? _calibration;
    private readonly ExchangePort? _exchange;
    private readonly FrameReader _reader = new FrameReader();
    private readonly SequenceWatch _watch = new SequenceWatch();
    private readonly LinkAnswers _answers;
    private readonly SettingsUpload _upload = new SettingsUpload();
    private readonly TelemetryClock _clock = new TelemetryClock();
    private readonly TelemetrySampler _sampler = new TelemetrySampler();
    private readonly TelemetryRequest _rate = new TelemetryRequest();
    private readonly UploadBegin _begin = new UploadBegin();
    private readonly UploadValue _value = new UploadValue();
    private readonly FrameWriter _writer = new FrameWriter();
    private readonly Frame _sample = new Frame();
    private readonly byte[] _received = new byte[MostBytesReadPerStep];
    private int _receivedCount;
    private int _receivedNext;
    private int _sent;
    private int _room;
    private bool _answerPending;
    private MessageId _lastRequest;
    private int _lastSequence;
    private int _timeMicroseconds;
    private Controller? _controller;
    private PowerUpCheck? _powerUp;

    /// <summary>Buttons pressed over the link.</summary>
    public readonly RemoteButtons Buttons = new RemoteButtons();

    /// <summary>Builds the port; until <see cref="Serve"/> it neither reads nor sends.</summary>
    /// <param name="line">The line.</param>
    /// <param name="settings">Where settings are kept.</param>
    /// <param name="permit">The local permit.</param>
    /// <param name="identity">Who the board is.</param>
    /// <param name="calibration">What answers ids 30 to 3F hex; none on a board that cannot.</param>
    /// <param name="exchange">What answers ids 40 to 4F hex; none on a board that cannot.</param>
    public LinkPort(
        ISerialLine line, ISettingsTarget settings, ILocalPermit permit, BoardIdentity identity, CalibrationPort? calibration = null,
        ExchangePort? exchange = null)
    {
        _line = line;
        _settings = settings;
        _permit = permit;
        _calibration = calibration;
        _exchange = exchange;
        _answers = new LinkAnswers(identity, calibration != null, exchange != null);
    }

    /// <summary>True with nothing read that waits to be looked at and nothing left to send.</summary>
    public bool IsIdle => _receivedNext == _receivedCount && !IsSending && !_answerPending;

    /// <summary>Names the controller that the link speaks of; again whenever it was built anew.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="powerUp">The lock before it; none on a board that has no such lock.</param>
    public void Serve(Controller controller, PowerUpCheck? powerUp = null)
    {
        _controller = controller;
        _powerUp = powerUp;
    }

    /// <summary>Reads, and acts on one request at most. Call ahead of the tick.</summary>
    public void Receive()
    {
        if (_controller == null) return;
        if (_receivedNext == _receivedCount)
        {
            _receivedNext = 0;
            _receivedCount = _line.Read(_received, MostBytesReadPerStep);
        }

        while (_receivedNext < _receivedCount)
        {
            if (!_reader.Take(_received[_receivedNext++])) continue;
            Act(_reader.Frame, _controller);
            return;
        }
    }

    /// <summary>Sends an answer or a sample, as far as the line takes it. Call behind the tick.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call.</param>
    /// <param name="readings">What the controller was given.</param>
    /// <param name="outputs">What it commanded.</param>
    public void Send(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        if (_controller == null) return;
        // Simulated readings prove nothing about real coils and channels.
        if (_exchange != null && _exchange.IsOn) _exchange.Answer(_answers.Frame, _controller, outputs);
        else _calibration?.Step(elapsedMicroseconds, readings, outputs);
        _timeMicroseconds = unchecked(_timeMicroseconds + elapsedMicroseconds);
        bool isDue = _clock.IsDue(elapsedMicroseconds);
        _room = _line.Room();
        if (_room > MostBytesSentPerStep) _room = MostBytesSentPerStep;
        SendSome();
        if (!IsSending && _answerPending)
        {
            _answerPending = false;
            Send(_answers.Frame);
        }

        if (!isDue) return;
        if (IsSending)
        {
            _sampler.DroppedSamples++;
            return;
        }

        _sampler.Write(_sample, _timeMicroseconds, _controller, readings, outputs);
        Send(_sample);
    }

    private bool IsSending => _sent < _writer.Length;

    private void Send(Frame frame)
    {
        _writer.Write(frame);
        _sent = 0;
        SendSome();
    }

    // As much of the frame as the line still takes in this period.
    private void SendSome()
    {
        int count = _writer.Length - _sent;
        if (count > _room) count = _room;
        if (count <= 0) return;
        _line.Write(_writer.Line, _sent, count);
        _sent += count;
        _room -= count;
    }

    private void Act(Frame request, Controller controller)
    {
        MessageId id = request.Id;
        // A greeting begins a session, whose numbers have nothing to do with those before it.
        if (id == MessageId.AskHello) _watch.Restart();
        _watch.Take(request.Sequence);
        // A request whose answer was lost comes again: it is answered again, not carried out again. A stop is always carried out.
        bool isRepeated = id == _lastRequest && request.Sequence == _lastSequence;
        bool isAnswered = isRepeated && id != MessageId.AskHello && id != MessageId.Stop;
        _lastRequest = id;
        _lastSequence = request.Sequence;
        _answerPending = true;
        if (isAnswered) return;

        int bodyBytes = MessageBody.Bytes(id);
        if (bodyBytes == MessageBody.Unknown) Ack(request, LinkReason.UnknownMessage);
        else if (bodyBytes != request.BodyLength) Ack(request, LinkReason.WrongLength);
        else Answer(request, controller);
    }

    private bool IsExchanging => _exchange != null && _exchange.IsOn;

    private void Answer(Frame request, Controller controller)
    {
        if (_exchange != null && request.Id >= MessageId.BeginExchange && request.Id <= MessageId.EndExchange)
        {
            Exchange(request, controller.Phase, _exchange);
            return;
        }

        switch (request.Id)
        {
            case MessageId.AskHello: _answers.Hello(request, controller, _settings, _permit.IsGiven()); break;
            case MessageId.Ping: _answers.Pong(request, _reader, _watch); break;
            case MessageId.ReadLog: _answers.Event(request, controller.Log); break;
            case MessageId.ReadLock:
                if (_powerUp == null) Ack(request, LinkReason.UnknownMessage);
                else _answers.Lock(request, _powerUp);
                break;
            case MessageId.ReadSetting: _answers.Setting(request, _settings.Kept); break;
            case MessageId.BeginUpload:
            case MessageId.PutValue:
            case MessageId.CommitUpload:
                LinkReason refusal = IsExchanging ? LinkReason.NotWhileExchanging : Upload(request, controller.Phase);
                _answers.Ack(request, refusal, _upload.Setting, _upload.Problem);
                break;
            default:
                if (IsExchanging && request.Id >= MessageId.Calibrate && request.Id <= MessageId.ReadNoise) Ack(request, LinkReason.NotWhileExchanging);
                else if (_calibration == null || !_calibration.TryAnswer(request, _answers)) Ack(request, Command(request));
                break;
        }
    }

    private void Exchange(Frame request, Phase phase, ExchangePort exchange)
    {
        // Readings that were taken in are answered behind their tick.
        if (request.Id == MessageId.BeginExchange) Ack(request, exchange.Begin(request, phase));
        else if (request.Id == MessageId.EndExchange) Ack(request, exchange.End());
        else Ack(request, exchange.Take(request));
    }

    private LinkReason Command(Frame request)
    {
        switch (request.Id)
        {
            case MessageId.SetTelemetry:
                _rate.Read(request);
                return _clock.TrySet(_rate.PeriodMicroseconds) ? LinkReason.Done : LinkReason.OutOfRange;
            case MessageId.Stop:
                Buttons.PressStop();
                return LinkReason.Done;
            case MessageId.Reset:
                Buttons.PressReset();
                return LinkReason.Done;
            case MessageId.Start:
                if (!_permit.IsGiven()) return LinkReason.NoLocalPermit;
                Buttons.PressStart();
                return LinkReason.Done;
            // What only the board sends.
            default: return LinkReason.UnknownMessage;
        }
    }

    private LinkReason Upload(Frame request, Phase phase)
    {
        if (request.Id == MessageId.PutValue)
        {
            _value.Read(request);
            return _upload.Take(_value);
        }

        // A new set means a new controller, which forgets a latched fault: while tripped that would be a reset past the reset.
        if (phase != Phase.Ready && phase != Phase.NotSetUp)
        {
            _upload.Drop();
            return LinkReason.NotWhileRunning;
        }

        if (request.Id == MessageId.CommitUpload) return _upload.Commit(_settings);
        _begin.Read(request);
        return _upload.Begin(_begin);
    }

    private void Ack(Frame request, LinkReason reason) => _answers.Ack(request, reason, SettingId.None, SettingProblem.None);
}
