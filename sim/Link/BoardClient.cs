using System;
using System.Collections.Generic;
using System.IO;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>
/// The desk's end of the serial link: asks a board, takes its samples. Requests may come from several threads; they go one by one.
/// A start needs the local permit at the machine, and no stop over a link takes the place of the hard-wired chain.
/// </summary>
public sealed class BoardClient : IAsyncDisposable
{
    private const int KeptSamples = 100_000;

    private readonly RequestLine _line;
    private readonly TelemetryDecoder _decoder = new();
    private readonly Channel<Sample> _samples = System.Threading.Channels.Channel.CreateBounded<Sample>(
        new BoundedChannelOptions(KeptSamples) { FullMode = BoundedChannelFullMode.DropOldest, SingleWriter = true });
    private readonly LinkTiming _timing;

    private BoardClient(Stream stream, LinkTiming timing)
    {
        _timing = timing;
        _line = new RequestLine(stream, timing, frame => _samples.Writer.TryWrite(_decoder.Take(frame)), failure => _samples.Writer.TryComplete(failure));
    }

    /// <summary>What the board said when it was last greeted.</summary>
    public BoardGreeting Greeting { get; private set; } = null!;

    /// <summary>Samples in the order in which they came; of those that nobody reads, the last 100 000 are kept.</summary>
    public ChannelReader<Sample> Samples => _samples.Reader;

    /// <summary>Samples that the board left out because its line was busy, since the first that came.</summary>
    public long DroppedSamples => _decoder.Dropped;

    /// <summary>Greets a board.</summary>
    /// <param name="stream">The line, open; closed with the client, or at once when this fails.</param>
    /// <param name="timing">How long to wait.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">No answer, or a board that speaks another version of the protocol.</exception>
    public static async Task<BoardClient> ConnectAsync(Stream stream, LinkTiming? timing = null, CancellationToken cancellation = default)
    {
        BoardClient client = new(stream, timing ?? new LinkTiming());
        try
        {
            await client.GreetAsync(cancellation);
            return client;
        }
        catch
        {
            await client.DisposeAsync();
            throw;
        }
    }

    /// <summary>Greets the board again: phase, permit and settings may have changed.</summary>
    /// <exception cref="LinkException">No answer, or another version of the protocol.</exception>
    public async Task<BoardGreeting> GreetAsync(CancellationToken cancellation = default)
    {
        HelloAnswer hello = new();
        hello.Read(await AskAsync(Bare(MessageId.AskHello), MessageId.Hello, "greeting", cancellation));
        if (hello.ProtocolVersion != LinkPort.ProtocolVersion)
        {
            throw new LinkException($"greeting: the board speaks version {hello.ProtocolVersion} of the link; allowed: {LinkPort.ProtocolVersion}");
        }

        return Greeting = BoardGreeting.Of(hello);
    }

    /// <summary>Asks for an echo, and how well both ends hear.</summary>
    /// <exception cref="LinkException">No answer, or a wrong echo.</exception>
    public async Task<LinkHealth> PingAsync(CancellationToken cancellation = default)
    {
        PingRequest ping = new() { Echo = Environment.TickCount };
        PongAnswer pong = new();
        pong.Read(await AskAsync(Filled(ping.Write), MessageId.Pong, "echo", cancellation));
        if (pong.Echo != ping.Echo) throw new LinkException($"echo: sent {ping.Echo}, came back {pong.Echo}");
        return new LinkHealth(pong.WrongChecks, pong.OverlongFrames, pong.BrokenFrames, pong.LostFrames, _line.BadFrames);
    }

    /// <summary>Asks why the board does not let the controller begin.</summary>
    /// <returns>Null from a board without such a lock.</returns>
    /// <exception cref="LinkException">No answer.</exception>
    public async Task<BoardLock?> ReadLockAsync(CancellationToken cancellation = default)
    {
        try
        {
            LockAnswer answer = new();
            answer.Read(await AskAsync(Bare(MessageId.ReadLock), MessageId.Lock, "lock at power-up", cancellation));
            return BoardLock.Of(answer);
        }
        catch (LinkException refused) when (refused.Reason == LinkReason.UnknownMessage)
        {
            return null;
        }
    }

    /// <summary>Presses stop.</summary>
    /// <exception cref="LinkException">No answer: <b>the stop may not have arrived</b>. Use the hard-wired one.</exception>
    public Task StopAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.Stop), "stop", cancellation);

    /// <summary>Presses reset.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public Task ResetAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.Reset), "reset", cancellation);

    /// <summary>Presses start. That the press was passed on does not mean that the motor starts.</summary>
    /// <exception cref="LinkException">No answer, or no local permit. Without an answer the press may have arrived all the same.</exception>
    public Task StartAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.Start), "start", cancellation);

    /// <summary>Sets how often samples come.</summary>
    /// <param name="periodMicroseconds">0 for none, or <see cref="TelemetryClock.ShortestMicroseconds"/> to <see cref="TelemetryClock.LongestMicroseconds"/>.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">No answer, or a period out of range.</exception>
    public Task SetTelemetryAsync(int periodMicroseconds, CancellationToken cancellation = default)
    {
        string range = $"time between samples {periodMicroseconds} us (allowed: 0, or {TelemetryClock.ShortestMicroseconds} to {TelemetryClock.LongestMicroseconds} us)";
        return DoAsync(Filled(new TelemetryRequest { PeriodMicroseconds = periodMicroseconds }.Write), range, cancellation);
    }

    /// <summary>Records samples without a gap, then ends them; when it fails, they may go on.</summary>
    /// <param name="periodMicroseconds">Time between samples.</param>
    /// <param name="count">How many.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">The line is too slow for the period, or failed.</exception>
    public async Task<Record> RecordAsync(int periodMicroseconds, int count, CancellationToken cancellation = default)
    {
        Record record = new(periodMicroseconds);
        await SetTelemetryAsync(periodMicroseconds, cancellation);
        // Counted from before the first sample that may belong to the record: a loss too many is said rather than one too few.
        long droppedBefore = DroppedSamples;
        int badBefore = _line.BadFrames;
        while (_samples.Reader.TryRead(out _))
        {
            // What came before belongs to no record.
        }

        while (record.Samples.Count < count) record.Add(await NextSampleAsync(periodMicroseconds, cancellation));
        long dropped = DroppedSamples - droppedBefore;
        await SetTelemetryAsync(0, cancellation);
        if (dropped > 0) throw new LinkException($"record: the board left out {dropped} samples at a period of {periodMicroseconds} us; the line takes fewer");
        if (_line.BadFrames > badBefore) throw new LinkException("record: frames from the board were lost or damaged on the line, so samples may be missing");
        return record;
    }

    /// <summary>Downloads the event log, oldest first.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public async Task<IReadOnlyList<LoggedEvent>> DownloadLogAsync(CancellationToken cancellation = default)
    {
        List<LoggedEvent> events = [];
        LogAnswer answer = new();
        do
        {
            answer.Read(await AskAsync(Filled(new LogRequest { Index = events.Count }.Write), MessageId.LogEntry, $"event {events.Count}", cancellation));
            if (answer.Count > 0) events.Add(new LoggedEvent(answer.Kind, answer.Number, answer.Value, answer.Seconds));
        }
        while (events.Count < answer.Count);
        return events;
    }

    /// <summary>Uploads a set of settings and reads every value back.</summary>
    /// <param name="settings">The set.</param>
    /// <param name="caseHash">A number that stands for the case that it was designed from.</param>
    /// <param name="cancellation">Gives up; the board then drops what it has.</param>
    /// <exception cref="LinkException">The board refused the set, named by setting and value, or keeps another number than was sent.</exception>
    public async Task UploadAsync(Settings settings, int caseHash, CancellationToken cancellation = default)
    {
        List<SettingNumber> numbers = SettingNumber.Of(settings);
        UploadBegin begin = new()
        {
            SettingsVersion = SettingTable.Version,
            ValueCount = numbers.Count,
            Checksum = SettingNumber.Checksum(numbers),
            CaseHash = caseHash,
        };
        await DoAsync(Filled(begin.Write), $"settings of version {SettingTable.Version}", cancellation);
        foreach (SettingNumber number in numbers)
        {
            UploadValue value = new() { Setting = number.Id, Index = number.Index, Bits = number.Bits };
            await DoAsync(Filled(value.Write), $"{number.Name} = {number.Written} (allowed: {number.Range})", cancellation);
        }

        await DoAsync(Bare(MessageId.CommitUpload), "settings", cancellation);
        foreach (SettingNumber sent in numbers)
        {
            SettingNumber kept = await ReadAsync(sent.Id, sent.Index, cancellation);
            if (kept != sent) throw new LinkException($"{sent.Name}: sent {sent.Written}, the board keeps {kept.Written}");
        }
    }

    /// <summary>Reads the settings that the board keeps.</summary>
    /// <exception cref="LinkException">No answer, or settings of another version.</exception>
    public async Task<Settings> ReadSettingsAsync(CancellationToken cancellation = default)
    {
        if (Greeting.SettingsVersion != SettingTable.Version)
        {
            throw new LinkException($"settings: the board's table has version {Greeting.SettingsVersion}; allowed: {SettingTable.Version}", LinkReason.WrongVersion);
        }

        Settings settings = new();
        foreach (SettingRow row in SettingTable.Rows)
        {
            // Counts stand before what they count, so the number of values is known when they are read.
            for (int i = 0; i < SettingAccess.Count(settings, row.Id); i++)
            {
                SettingNumber kept = await ReadAsync(row.Id, i, cancellation);
                kept.WriteTo(settings);
            }
        }

        return settings;
    }

    /// <summary>
    /// Carries out one step of the calibration of a channel, and waits until its samples are taken. Nothing is in force before
    /// <see cref="CalibrationStep.Save"/>, which takes effect at once and is read back by the board.
    /// </summary>
    /// <param name="channel">Which channel.</param>
    /// <param name="step">Which step.</param>
    /// <param name="trueUnits">For the second point: what another instrument shows, in V, A or rad/s.</param>
    /// <param name="cancellation">Gives up; the board ends what it has begun.</param>
    /// <exception cref="LinkException">No answer, or the board refused, with its reason and what is allowed.</exception>
    public async Task<BoardCalibration> CalibrateAsync(
        CalibrationChannel channel, CalibrationStep step, float trueUnits = 0f, CancellationToken cancellation = default)
    {
        CalibrationRequest request = new() { Channel = channel, Step = step, TrueUnits = trueUnits };
        BoardCalibration found;
        do
        {
            CalibrationAnswer answer = new();
            answer.Read(await AskAsync(Filled(request.Write), MessageId.Calibration, $"calibration of {channel}", cancellation));
            found = BoardCalibration.Of(answer);
            request.Step = CalibrationStep.Read;
        }
        while (found.IsTaking);
        // Reading how a channel stands is no failure because its last step was one.
        if (found.Reason == CalibrationReason.NoSuchChannel || (found.Reason != CalibrationReason.Done && step != CalibrationStep.Read))
        {
            throw new LinkException($"calibration of {channel}, {step}: {CalibrationText.Of(found)}", found.Reason);
        }

        return found;
    }

    /// <summary>Begins to record noise; what was recorded before is forgotten.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public Task BeginNoiseAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.BeginNoise), "noise check", cancellation);

    /// <summary>Ends the recording of noise.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public Task EndNoiseAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.EndNoise), "noise check", cancellation);

    /// <summary>Reads what was recorded of a channel.</summary>
    /// <param name="channel">Which channel.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">No answer, or the board has no such channel.</exception>
    public async Task<ChannelNoise> ReadNoiseAsync(CalibrationChannel channel, CancellationToken cancellation = default)
    {
        NoiseAnswer[] answers = new NoiseAnswer[(int)NoiseSituation.None];
        for (NoiseSituation situation = NoiseSituation.Rest; situation < NoiseSituation.None; situation++)
        {
            NoiseRequest request = new() { Channel = channel, Situation = situation };
            NoiseAnswer answer = answers[(int)situation] = new NoiseAnswer();
            answer.Read(await AskAsync(Filled(request.Write), MessageId.Noise, $"noise of {channel} ({situation})", cancellation));
        }

        return ChannelNoise.Of(answers);
    }

    /// <summary>
    /// Puts a machine that is simulated here in the place of the board's inputs and outputs. No real coil is energised and no real input read
    /// until <see cref="EndExchangeAsync"/>, or until nothing has come for the given time.
    /// </summary>
    /// <param name="mode">Who keeps the time.</param>
    /// <param name="silence">Time without an exchange behind which the board ends it, 20 ms to 60 s.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">No answer, or a board that runs or cannot.</exception>
    public Task BeginExchangeAsync(ExchangeMode mode, TimeSpan silence, CancellationToken cancellation = default) =>
        DoAsync(Filled(new ExchangeBegin { Mode = mode, SilenceMicroseconds = (int)silence.TotalMicroseconds }.Write), "exchange", cancellation);

    /// <summary>Shows the board what the simulated machine shows.</summary>
    /// <returns>What its controller made of it.</returns>
    /// <exception cref="LinkException">No answer, or the board has ended the exchange.</exception>
    public async Task<ExchangeAnswer> ExchangeAsync(ExchangeRequest request, CancellationToken cancellation = default)
    {
        ExchangeAnswer answer = new();
        answer.Read(await AskAsync(Filled(request.Write), MessageId.Exchanged, "exchange", cancellation));
        return answer;
    }

    /// <summary>Gives the board its own inputs and outputs back; its lock is then shut as after power-up.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public Task EndExchangeAsync(CancellationToken cancellation = default) => DoAsync(Bare(MessageId.EndExchange), "end of the exchange", cancellation);

    /// <summary>Asks what the board's memory holds, and whether it locks starting out.</summary>
    /// <exception cref="LinkException">No answer.</exception>
    public async Task<BoardMemoryState> ReadMemoryAsync(CancellationToken cancellation = default)
    {
        MemoryAnswer answer = new();
        answer.Read(await AskAsync(Bare(MessageId.ReadMemory), MessageId.Memory, "memory", cancellation));
        return BoardMemoryState.Of(answer);
    }

    /// <summary>Closes the line. The board goes on as it is.</summary>
    public ValueTask DisposeAsync() => _line.DisposeAsync();

    private static Frame Bare(MessageId id)
    {
        Frame request = new();
        request.Begin(id, 0);
        return request;
    }

    private static Frame Filled(Action<Frame> write)
    {
        Frame request = new();
        write(request);
        return request;
    }

    private async Task<Sample> NextSampleAsync(int periodMicroseconds, CancellationToken cancellation)
    {
        TimeSpan limit = TimeSpan.FromMicroseconds(periodMicroseconds) + (_timing.Answer * _timing.Tries);
        using CancellationTokenSource late = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        late.CancelAfter(limit);
        try
        {
            return await _samples.Reader.ReadAsync(late.Token);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw new LinkException($"record: no sample for {limit.TotalMilliseconds:0} ms");
        }
        catch (ChannelClosedException closed)
        {
            throw new LinkException($"record: {closed.InnerException?.Message}", closed);
        }
    }

    private async Task<SettingNumber> ReadAsync(SettingId id, int index, CancellationToken cancellation)
    {
        SettingAnswer answer = new();
        Frame request = Filled(new SettingRequest { Setting = id, Index = index }.Write);
        answer.Read(await AskAsync(request, MessageId.Setting, new SettingNumber(id, index, 0).Name, cancellation));
        return new SettingNumber(answer.Setting, answer.Index, answer.Bits);
    }

    private async Task DoAsync(Frame request, string what, CancellationToken cancellation) =>
        await AskAsync(request, MessageId.Ack, what, cancellation);

    private async Task<Frame> AskAsync(Frame request, MessageId wanted, string what, CancellationToken cancellation)
    {
        Frame answer = await _line.AskAsync(request, cancellation);
        if (answer.Id == MessageId.Ack)
        {
            AckAnswer ack = new();
            ack.Read(answer);
            if (ack.Reason != LinkReason.Done) throw Refusal(ack, what);
        }

        if (answer.Id != wanted) throw new LinkException($"{what}: the board answered {answer.Id}; allowed: {wanted}");
        return answer;
    }

    private static LinkException Refusal(AckAnswer ack, string what)
    {
        string setting = ack.Reason == LinkReason.Contradiction ? $": {new SettingNumber(ack.Setting, 0, 0).Name}, {ack.Problem}" : "";
        return new LinkException($"{what}: {LinkReasonText.Of(ack.Reason)}{setting}", ack.Reason);
    }
}
