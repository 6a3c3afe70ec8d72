using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Records;
using StarterCtl.House;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Tests.Campaign;

/// <summary>All shipped trials, run once on the simulator.</summary>
public sealed class Campaign : ITrialWatch, IProgress<double>
{
    private readonly ConcurrentDictionary<Trial, PhaseAtFault> _faults = new();

    public Campaign()
    {
        Trials = [.. Directory.EnumerateFiles(Folder, "*" + TrialFile.Extension).Order(StringComparer.Ordinal).SelectMany(TrialFile.Read)];
        Results = TrialRunner.Run(Trials, new SimulatorTarget(), new TrialOptions(), this, this, CancellationToken.None);
    }

    public static string Folder { get; } = Path.Combine(Repository.Root, "sim", "trials");

    public IReadOnlyList<Trial> Trials { get; }

    public IReadOnlyList<TrialResult> Results { get; }

    internal PhaseAtFault FaultOf(Trial trial) => _faults[trial];

    public ISampleSink? Started(Trial trial, int attempt) => _faults[trial] = new PhaseAtFault(trial.Job.Run.Setup.PeriodMicroseconds);

    public void Ended(Trial trial, int attempt, TrialAttempt ended)
    {
    }

    public void Done(TrialResult result)
    {
    }

    public void Report(double value)
    {
    }
}
