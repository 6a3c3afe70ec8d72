using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>Simulated starts of a case, on plants between its limits.</summary>
/// <param name="file">The case.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class SimulatedStarts(CaseFile file, CancellationToken cancellation)
{
    private readonly PreparedRun _prepared = CaseRunner.Prepare(file);

    private readonly double _mostSeconds = file.Has(CaseKeys.LimitsStartTime) ? file.Number(CaseKeys.LimitsStartTime) : double.PositiveInfinity;

    /// <summary>Makes starts on Sobol's points.</summary>
    /// <param name="starts">How many.</param>
    /// <param name="seed">Seed of the points.</param>
    /// <param name="limitAmps">Peak that they are held against, A.</param>
    /// <param name="progress">Told which part is done.</param>
    public StartsSeen Sample(int starts, int seed, double limitAmps, IProgress<double>? progress)
    {
        SweepPlan plan = SweepPlan.Of(file, new SweepOrder(SamplingMethod.Sobol, starts, seed));
        StartsSeen seen = new(starts, 0, 0, 0, 0, double.NaN);
        SweepRunner.Run(plan, 0, starts, Take, progress: progress, cancellation: cancellation);
        return seen;

        void Take(ReadOnlyMemory<SweepRow> block)
        {
            foreach (SweepRow row in block.Span)
            {
                bool isFinished = SecondsOf(row) <= _mostSeconds;
                seen = seen with
                {
                    HighestRow = row.PeakAmps > seen.HighestAmps ? row.Row : seen.HighestRow,
                    HighestAmps = Math.Max(seen.HighestAmps, row.PeakAmps),
                    Above = seen.Above + (row.PeakAmps > limitAmps ? 1 : 0),
                    Unfinished = seen.Unfinished + (isFinished ? 0 : 1),
                    LongestSeconds = isFinished && !(row.SecondsToFullSupply <= seen.LongestSeconds) ? row.SecondsToFullSupply : seen.LongestSeconds,
                };
            }
        }
    }

    /// <summary>The nominal start.</summary>
    public NominalCost Nominal()
    {
        SweepRow row = Row([], _prepared.Setup);
        return new NominalCost(row.SecondsToFullSupply, row.SectionJoules.Sum(), row.ArmatureJoules);
    }

    /// <summary>The highest peak on the way uphill from a plant, A.</summary>
    public double ClimbPeak(PlantSpace space, PlantPoint from, SectionSpan span) => Climb(Values(space, from, span.Low), row => row.PeakAmps);

    /// <summary>The longest time to the full supply on the way uphill from a plant, s; infinity where a start does not get there in time.</summary>
    public double ClimbSeconds(PlantSpace space, PlantPoint from, SectionSpan span) =>
        Climb(Values(space, from, span.High), row => SecondsOf(row) is double seconds && seconds <= _mostSeconds ? seconds : double.PositiveInfinity);

    // A start that trips did not get there, whenever that was.
    private static double SecondsOf(SweepRow row) => row.FirstFault.Length > 0 || double.IsNaN(row.SecondsToFullSupply) ? double.PositiveInfinity : row.SecondsToFullSupply;

    // The chosen starter may have more sections than the case that the plant was found for.
    private double[] Values(PlantSpace space, PlantPoint from, double section)
    {
        Dictionary<string, double> known = space.Variables.Zip(from.Values).Where(pair => pair.First.Key != CaseKeys.StarterSections).ToDictionary(pair => pair.First.Path, pair => pair.Second);
        return [.. _prepared.Variables.Select(variable => known.TryGetValue(variable.Path, out double value) ? value : Math.Clamp(section * variable.Nominal, variable.Low, variable.High))];
    }

    private double Climb(double[] values, Func<SweepRow, double> height)
    {
        double highest = height(Row(values));
        bool moved = true;
        while (moved && double.IsFinite(highest))
        {
            moved = false;
            for (int i = 0; i < values.Length; i++)
            {
                foreach (double limit in (double[])[_prepared.Variables[i].Low, _prepared.Variables[i].High])
                {
                    cancellation.ThrowIfCancellationRequested();
                    double[] other = [.. values];
                    other[i] = limit;
                    double reached = height(Row(other));
                    if (!(reached > highest)) continue;
                    (values, highest, moved) = (other, reached, true);
                }
            }
        }

        return highest;
    }

    private SweepRow Row(double[] values) => Row(values, _prepared.RealSetup(values));

    private SweepRow Row(double[] values, RunSetup setup)
    {
        RunResult result = StartSimulation.Run(setup, _prepared.Settings);
        return SweepRow.Of(0, 0, values, _prepared.Judge(result), result);
    }
}
