using System;
using System.Collections.Generic;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Tests.Running;

/// <summary>Keeps what a run of trials tells.</summary>
internal sealed class Watched : ITrialWatch, IProgress<double>
{
    public List<string> Ended { get; } = [];

    public List<double> Progress { get; } = [];

    public Action<TrialResult> OnDone { get; init; } = _ => { };

    public ISampleSink? Started(Trial trial, int attempt) => null;

    void ITrialWatch.Ended(Trial trial, int attempt, TrialAttempt ended)
    {
        lock (Ended) Ended.Add($"{trial.Row} {attempt} {ended.Verdict}");
    }

    public void Done(TrialResult result) => OnDone(result);

    public void Report(double value) => Progress.Add(value);
}
