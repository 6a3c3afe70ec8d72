using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Running;

/// <summary>Runs trials against a target: at once where the target allows it, one by one where there is one of it.</summary>
public sealed class TrialRunner
{
    private readonly IReadOnlyList<Trial> _trials;
    private readonly ITrialTarget _target;
    private readonly TrialOptions _options;
    private readonly ITrialWatch _watch;
    private readonly IProgress<double> _progress;
    private readonly double[] _parts;
    private readonly TrialResult?[] _results;
    private readonly Lock _done = new();
    private int _next = -1;
    private volatile bool _isStopped;

    private TrialRunner(IReadOnlyList<Trial> trials, ITrialTarget target, TrialOptions options, ITrialWatch watch, IProgress<double> progress)
    {
        _trials = trials;
        _target = target;
        _options = options;
        _watch = watch;
        _progress = progress;
        _results = new TrialResult?[trials.Count];
        _parts = new double[trials.Count];
    }

    /// <summary>Runs every trial, as far as it gets.</summary>
    /// <param name="trials">The trials.</param>
    /// <param name="target">What they are run against.</param>
    /// <param name="options">How.</param>
    /// <param name="watch">Told how it goes. What it throws ends the run, the target safe.</param>
    /// <param name="progress">Told which part is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run: trials in the middle are aborted, the others not run.</param>
    /// <returns>One result a trial, in their order; a cancellation throws nothing.</returns>
    public static IReadOnlyList<TrialResult> Run(
        IReadOnlyList<Trial> trials, ITrialTarget target, TrialOptions options, ITrialWatch watch, IProgress<double> progress, CancellationToken cancellation) =>
        new TrialRunner(trials, target, options, watch, progress).Run(cancellation);

    private TrialResult[] Run(CancellationToken cancellation)
    {
        using CancellationTokenSource ending = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        int count = _target.IsHardware ? 1 : Math.Clamp(Environment.ProcessorCount, 1, Math.Max(_trials.Count, 1));
        Task[] workers = [.. Enumerable.Range(0, count).Select(_ => Task.Run(() => Work(ending), CancellationToken.None))];
        Task.WhenAll(workers).GetAwaiter().GetResult();
        return [.. _trials.Select((trial, i) => _results[i] ?? new TrialResult(trial, []))];
    }

    private void Work(CancellationTokenSource ending)
    {
        try
        {
            while (!_isStopped && !ending.IsCancellationRequested)
            {
                int index = Interlocked.Increment(ref _next);
                if (index >= _trials.Count) return;
                RunTrial(index, ending.Token);
            }
        }
        catch
        {
            // Whoever watches cannot go on, the disk being full, say: the others end too.
            ending.Cancel();
            throw;
        }
    }

    private void RunTrial(int index, CancellationToken cancellation)
    {
        List<TrialAttempt> attempts = [];
        do
        {
            attempts.Add(Attempt(index, attempts.Count + 1, cancellation));
        }
        while (attempts[^1].Verdict is TrialVerdict.Fail or TrialVerdict.Error && attempts.Count <= _options.Retries && !cancellation.IsCancellationRequested);

        TrialResult result = new(_trials[index], attempts);
        if (_options.FailsFast && result.Verdict != TrialVerdict.Pass) _isStopped = true;
        lock (_done)
        {
            _results[index] = result;
            Report(index, 1);
            _watch.Done(result);
        }
    }

    // Every trial counts alike; a long one in the middle counts as far as it is.
    private void Report(int index, double part)
    {
        lock (_done)
        {
            _parts[index] = part;
            _progress.Report(_parts.Sum() / _trials.Count);
        }
    }

    private TrialAttempt Attempt(int index, int number, CancellationToken cancellation)
    {
        Trial trial = _trials[index];
        TrialJudges judges = new(trial.Expectations, trial.Job.Run.Setup.PeriodMicroseconds);
        ISampleSink? record = _watch.Started(trial, number);
        TrialAttempt attempt = Run(trial, judges, record == null ? judges : new SampleFan(judges, record), new Part(this, index), cancellation);
        _watch.Ended(trial, number, attempt);
        return attempt;
    }

    private TrialAttempt Run(Trial trial, TrialJudges judges, ISampleSink samples, IProgress<double> part, CancellationToken cancellation)
    {
        try
        {
            TargetReport report = _target.Run(trial.Job, samples, part, cancellation);
            Outcome[] outcomes = [.. judges.End(), .. _options.Link.Judge(report.Link)];
            return new TrialAttempt(Array.TrueForAll(outcomes, outcome => outcome.Passed) ? TrialVerdict.Pass : TrialVerdict.Fail, outcomes, judges.LastSeconds) { Report = report };
        }
        catch (TargetException error)
        {
            return new TrialAttempt(TrialVerdict.Error, judges.End(), judges.LastSeconds) { Trouble = error.Message };
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            return new TrialAttempt(TrialVerdict.Aborted, judges.End(), judges.LastSeconds);
        }
    }

    private sealed class Part(TrialRunner runner, int index) : IProgress<double>
    {
        public void Report(double value) => runner.Report(index, value);
    }
}
