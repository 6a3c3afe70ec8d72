using System;
using System.Diagnostics;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Benchmarks;

/// <summary>Whole closed-loop starts per second.</summary>
internal static class Throughput
{
    private const int Starts = 10_000;
    private const int Rounds = 7;

    /// <summary>Median over the rounds.</summary>
    /// <param name="setup">The start.</param>
    /// <param name="settings">Its controller's settings.</param>
    /// <param name="cores">How many to use.</param>
    public static double StartsPerSecond(RunSetup setup, Settings settings, int cores)
    {
        RunMany(setup, settings, cores, Starts / 4);
        double[] rates = new double[Rounds];
        for (int i = 0; i < Rounds; i++)
        {
            long begin = Stopwatch.GetTimestamp();
            RunMany(setup, settings, cores, Starts);
            rates[i] = Starts / Stopwatch.GetElapsedTime(begin).TotalSeconds;
        }

        return rates.Order().ElementAt(Rounds / 2);
    }

    private static void RunMany(RunSetup setup, Settings settings, int cores, int starts) =>
        Parallel.For(0, starts, new ParallelOptions { MaxDegreeOfParallelism = cores }, _ =>
        {
            RunResult result = StartSimulation.Run(setup, settings);
            if (result.Phases[^1].Phase != Phase.Running) throw new InvalidOperationException("the reference start does not complete");
        });
}
