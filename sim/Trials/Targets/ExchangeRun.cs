using System;
using System.Diagnostics;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.Trials.Targets;

/// <summary>
/// One trial with the machine simulated here and the controller on a board: what the machine shows goes over the link, what the board
/// commands comes back. In lockstep every control period waits for its exchange; in real time the model keeps to the computer's clock and goes on
/// with the commands that came last.
/// </summary>
internal sealed class ExchangeRun
{
    // A happening that rounding puts just behind a period belongs to it.
    private const double TimeRounding = 1e-12;

    // Closer to its time than this a step is waited for without giving the processor away, which takes about a millisecond.
    private const double SpinSeconds = 0.0015;
    private const int StepsBetweenReports = 256;

    private readonly BoardClient _board;
    private readonly RunSetup _setup;
    private readonly ExchangePace _pace;
    private readonly ISampleSink _samples;
    private readonly PlantSide _side;
    private readonly Outputs _coils = new();
    private readonly double _periodSeconds;
    private readonly long _ticksPerSample;
    private readonly int _stepsPerExchange;
    private readonly Stopwatch _clock = new();
    private ExchangeAnswer _answer = new();
    private Task<ExchangeAnswer>? _underWay;
    private double _sentSeconds;

    /// <summary>Prepares a trial.</summary>
    /// <param name="board">A board whose exchange has begun.</param>
    /// <param name="setup">The machine and what happens to it.</param>
    /// <param name="pace">Who keeps the time.</param>
    /// <param name="samples">Receives the samples.</param>
    public ExchangeRun(BoardClient board, RunSetup setup, ExchangePace pace, ISampleSink samples)
    {
        _board = board;
        _setup = setup;
        _pace = pace;
        _samples = samples;
        _side = new PlantSide(setup);
        _periodSeconds = setup.PeriodMicroseconds * 1e-6;
        _ticksPerSample = Math.Max(1, samples.PeriodMicroseconds / setup.PeriodMicroseconds);
        _stepsPerExchange = pace.IsRealTime ? Math.Max(1, (int)Math.Round(pace.ExchangeSeconds / _periodSeconds)) : 1;
    }

    /// <summary>Latencies so far.</summary>
    public LatencyHistogram Latencies { get; } = new();

    /// <summary>How far behind its time each model step by the clock began.</summary>
    public LatencyHistogram StepsLate { get; } = new();

    /// <summary>Model steps that began more than a period late, and exchanges that were not answered when the next was due.</summary>
    public long MissedDeadlines { get; private set; }

    /// <summary>How far the trial got, s.</summary>
    public double Seconds { get; private set; }

    /// <summary>Runs the trial to its end.</summary>
    /// <exception cref="LinkException">The board is silent, or has ended the exchange.</exception>
    public async Task RunAsync(IProgress<double>? progress, CancellationToken cancellation)
    {
        await TickAsync(0, -_periodSeconds, true, cancellation);
        LookAtConditions(-_periodSeconds);
        if (!_setup.Events.Any(happening => happening.Command == OperatorCommand.Start)) _side.Obey(OperatorCommand.Start, 0);
        _side.Happen(0);

        long ticks = (long)Math.Ceiling(_setup.DurationSeconds / _periodSeconds - TimeRounding / _periodSeconds);
        _clock.Start();
        for (long tick = 0; tick <= ticks; tick++)
        {
            Seconds = tick * _periodSeconds;
            if (_pace.IsRealTime) WaitUntil(Seconds, cancellation);
            cancellation.ThrowIfCancellationRequested();
            await TickAsync(_setup.PeriodMicroseconds, Seconds, tick % _ticksPerSample == 0, cancellation, tick % _stepsPerExchange == 0);
            if (tick == ticks) break;
            LookAtConditions(Seconds);
            _side.Advance(Seconds, (tick + 1) * _periodSeconds, _periodSeconds);
            if (tick % StepsBetweenReports == 0) progress?.Report((double)tick / ticks);
        }

        if (_underWay != null) Take(await _underWay);
    }

    private async Task TickAsync(int elapsedMicroseconds, double now, bool isSample, CancellationToken cancellation, bool isExchange = true)
    {
        _side.Read(now);
        float amps = (float)_side.Plant.ArmatureAmps;
        double newtonMetres = _side.Plant.Constant * amps;
        if (!_pace.IsRealTime || now < 0)
        {
            Take(await AskAsync(elapsedMicroseconds, cancellation));
        }
        else
        {
            if (_underWay is { IsCompleted: true }) Take(await _underWay);
            if (isExchange) Send(elapsedMicroseconds, cancellation);
        }

        _side.Command(_coils, now);
        if (isSample) _samples.Add(Sampled(now, elapsedMicroseconds, newtonMetres));
        _side.MoveContacts(now);
    }

    // An exchange that is still under way when the next one is due takes its place.
    private void Send(int elapsedMicroseconds, CancellationToken cancellation)
    {
        if (_underWay != null) MissedDeadlines++;
        else _underWay = AskAsync(elapsedMicroseconds, cancellation);
    }

    private async Task<ExchangeAnswer> AskAsync(int elapsedMicroseconds, CancellationToken cancellation)
    {
        _sentSeconds = Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency;
        ExchangeAnswer answer = await _board.ExchangeAsync(ExchangeWords.Request(elapsedMicroseconds, _side.Readings), cancellation);
        Latencies.Add(Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency - _sentSeconds);
        return answer;
    }

    private void Take(ExchangeAnswer answer)
    {
        _answer = answer;
        _underWay = null;
        ExchangeWords.Put(answer, _coils);
    }

    private void LookAtConditions(double now)
    {
        if (_side.IsWaiting) _side.LookAtConditions(now, _answer.Phase is Phase.Accelerating or Phase.Running ? _answer.Stage : 0);
    }

    private void WaitUntil(double seconds, CancellationToken cancellation)
    {
        for (double left = seconds - _clock.Elapsed.TotalSeconds; left > 0; left = seconds - _clock.Elapsed.TotalSeconds)
        {
            if (left > SpinSeconds) Thread.Sleep(1);
            else Thread.Yield();
            cancellation.ThrowIfCancellationRequested();
        }

        double late = _clock.Elapsed.TotalSeconds - seconds;
        StepsLate.Add(Math.Max(0, late));
        if (late > _periodSeconds) MissedDeadlines++;
    }

    private Sample Sampled(double now, int elapsedMicroseconds, double newtonMetres)
    {
        Sample sample = new()
        {
            TimeSeconds = now,
            TorqueNewtonMetres = newtonMetres,
            LoadTorqueNewtonMetres = _side.Plant.LoadTorqueNewtonMetres,
            ArmatureCelsius = (float)_side.ArmatureCelsius,
            FieldCelsius = (float)_side.FieldCelsius,
            HottestSectionCelsius = (float)_side.HottestSectionCelsius,
        };
        ControllerTick.PutReadings(ref sample, elapsedMicroseconds, _side.Readings);
        ExchangeWords.Put(_answer, ref sample);
        return sample;
    }
}
