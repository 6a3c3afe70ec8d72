using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.Trials.Targets;

/// <summary>A board at the other end of a line, its machine simulated here. Its own inputs and outputs stay out of it.</summary>
/// <param name="name">As verdicts name it.</param>
/// <param name="open">Opens the line.</param>
/// <param name="pace">Who keeps the time.</param>
/// <param name="timing">How long it may take for what.</param>
/// <param name="retriesConnect">True tries to connect again until the time for it is over.</param>
public sealed class LinkTarget(string name, Func<CancellationToken, Task<Stream>> open, ExchangePace pace, TargetTiming timing, bool retriesConnect) : ITrialTarget
{
    // A frame may be lost: an exchange is sent at least so often before the board counts as silent.
    private const int LeastTries = 4;
    private static readonly TimeSpan BetweenRetries = TimeSpan.FromMilliseconds(200);

    // The board leaves the exchange by itself some time after this program has given up.
    private const int SilencePerStep = 4;

    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public bool IsHardware => true;

    /// <inheritdoc/>
    public bool IsByTheClock => pace.IsRealTime;

    /// <inheritdoc/>
    public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation) =>
        // A thread of its own: the caller's may be one that must not wait for tasks.
        Task.Run(() => RunAsync(job, samples, progress, cancellation), CancellationToken.None).GetAwaiter().GetResult();

    private async Task<TargetReport> RunAsync(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation)
    {
        BoardClient board = await ConnectAsync(job, cancellation);
        try
        {
            ExchangeRun run = new(board, job.Run.Setup, pace, samples);
            try
            {
                TimeSpan silence = TimeSpan.FromTicks(Math.Clamp((timing.Step * SilencePerStep).Ticks, Limit(ExchangePort.ShortestSilenceMicroseconds), Limit(ExchangePort.LongestSilenceMicroseconds)));
                LinkHealth before = await board.PingAsync(cancellation);
                await board.BeginExchangeAsync(pace.IsRealTime ? ExchangeMode.RealTime : ExchangeMode.Lockstep, silence, cancellation);
                await run.RunAsync(progress, cancellation);
                return await ReportAsync(board, run, before, cancellation);
            }
            catch (LinkException error)
            {
                throw new TargetException($"at {run.Seconds:0.000} s: {error.Message}", error);
            }
        }
        finally
        {
            await MakeSafeAsync(board);
        }
    }

    private static long Limit(int microseconds) => TimeSpan.FromMicroseconds(microseconds).Ticks;

    private async Task<BoardClient> ConnectAsync(TargetJob job, CancellationToken cancellation)
    {
        using CancellationTokenSource late = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        late.CancelAfter(timing.Connect);
        string trouble = $"no board within {timing.Connect.TotalSeconds:0.#} s";
        try
        {
            while (true)
            {
                try
                {
                    return await GreetAsync(job, late.Token);
                }
                catch (LinkException error) when (retriesConnect)
                {
                    trouble = error.Message;
                }

                await Task.Delay(BetweenRetries, late.Token);
            }
        }
        catch (LinkException error)
        {
            throw new TargetException(error.Message, error);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw new TargetException($"{trouble}; given up after {timing.Connect.TotalSeconds:0.#} s");
        }
    }

    private async Task<BoardClient> GreetAsync(TargetJob job, CancellationToken cancellation)
    {
        BoardClient board = await BoardClient.ConnectAsync(await open(cancellation), Repeats(), cancellation);
        try
        {
            Check(board.Greeting);
            if (board.Greeting.SettingsChecksum != SettingsChecksum.Of(job.Run.Settings)) await board.UploadAsync(job.Run.Settings, CaseHash.Of(job.CaseSha256), cancellation);
            return board;
        }
        catch
        {
            await board.DisposeAsync();
            throw;
        }
    }

    private LinkTiming Repeats()
    {
        int tries = Math.Max(LeastTries, (int)Math.Ceiling(timing.Step / timing.Answer));
        return new LinkTiming { Answer = timing.Step / tries, Tries = tries };
    }

    private static void Check(BoardGreeting board)
    {
        if (!board.Capabilities.HasFlag(LinkCapabilities.Exchange)) throw new TargetException($"{board.BoardName}, version {board.Version}: its firmware cannot exchange readings; allowed: {CoreIdentity.Version}");
        if (!board.ComputesAlike)
        {
            throw new TargetException($"{board.BoardName}, version {board.Version}: its boot check came to {board.BootCheckHash:X8}, that of this program to {BootCheck.Expected:X8}; it decides otherwise than version {CoreIdentity.Version}");
        }
    }

    private static async Task<TargetReport> ReportAsync(BoardClient board, ExchangeRun run, LinkHealth before, CancellationToken cancellation)
    {
        BoardGreeting greeting = await board.GreetAsync(cancellation);
        LinkHealth health = await board.PingAsync(cancellation);
        LatencyHistogram latencies = run.Latencies;
        return new TargetReport(greeting.Version, $"0x{greeting.SettingsChecksum:X8}")
        {
            Board = $"{greeting.BoardName}, version {greeting.Version}",
            Link = new LinkFigures(
                latencies.Count, run.MissedDeadlines, Lost(health) - Lost(before), latencies.LeastLatencySeconds, latencies.Quantile(0.5), latencies.Quantile(0.99), latencies.LargestLatencySeconds)
            {
                Histogram = latencies.Classes(),
                StepsLate = run.StepsLate.Classes(),
            },
        };
    }

    private static long Lost(LinkHealth health) => health.WrongChecks + health.OverlongFrames + health.BrokenFrames + health.LostFrames + health.BadFramesHere;

    // No real coil was ever on. The board gets its own inputs and outputs back; where it does not hear, its time for silence does it.
    private async Task MakeSafeAsync(BoardClient board)
    {
        using CancellationTokenSource late = new(timing.MakeSafe);
        try
        {
            await board.EndExchangeAsync(late.Token);
        }
        catch (Exception silent) when (silent is LinkException or OperationCanceledException)
        {
            // A line that is gone, say: the verdict has its own words for it.
        }

        await board.DisposeAsync();
    }
}
