using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Records;
using StarterCtl.Trials;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Benchmarks;

/// <summary>How long a thousand trials take: the shipped campaign as often as it takes.</summary>
internal static class TrialSpeed
{
    private const int Count = 1000;
    private const int Rounds = 5;

    /// <summary>Prints the median of five rounds, reading the files included, and what was simulated.</summary>
    public static void Print()
    {
        string folder = Path.Combine("sim", "trials");
        double[] seconds = new double[Rounds];
        double simulated = 0;
        for (int round = 0; round < Rounds; round++)
        {
            long began = Stopwatch.GetTimestamp();
            List<Trial> trials = [];
            while (trials.Count < Count) trials.AddRange(Directory.EnumerateFiles(folder, "*" + TrialFile.Extension).Order(StringComparer.Ordinal).SelectMany(TrialFile.Read));
            IReadOnlyList<TrialResult> results = TrialRunner.Run([.. trials.Take(Count)], new SimulatorTarget(), new TrialOptions(), new Silent(), new Silent(), CancellationToken.None);
            seconds[round] = Stopwatch.GetElapsedTime(began).TotalSeconds;
            simulated = results.Sum(result => result.Last!.Seconds);
        }

        Array.Sort(seconds);
        Console.WriteLine($"{Count} trials, {simulated:F0} s simulated, {Environment.ProcessorCount} cores: {seconds[Rounds / 2]:F1} s");
    }

    private sealed class Silent : ITrialWatch, IProgress<double>
    {
        public ISampleSink? Started(Trial trial, int attempt) => null;

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
}
