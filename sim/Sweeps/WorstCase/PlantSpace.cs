using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>Every plant that the tolerances of a case allow.</summary>
internal sealed class PlantSpace
{
    /// <summary>Most corners that are looked at; of more a fair sample is taken.</summary>
    public const int MostCorners = 4096;

    // Places between the limits that are tried of each quantity.
    private static readonly double[] Inside = [0.25, 0.5, 0.75];

    private readonly PreparedRun _prepared;
    private readonly int[] _decisive;
    private readonly double[] _middle;

    /// <summary>Looks at the tolerances of a case and finds out which of them matter.</summary>
    public PlantSpace(PreparedRun prepared)
    {
        _prepared = prepared;
        _middle = [.. prepared.Variables.Select(variable => Math.Clamp(variable.Nominal, variable.Low, variable.High))];
        _decisive = [.. Enumerable.Range(0, _middle.Length).Where(Matters)];
        CornerCount = FactorialSampling.CountOf(_decisive.Length, 2);
        Corners = CornersOf();
    }

    /// <summary>What may differ.</summary>
    public IReadOnlyList<PlantVariable> Variables => _prepared.Variables;

    /// <summary>The variables that move a cutout, the current behind it or the load; sections have a span of their own and are not among them.</summary>
    public IReadOnlyList<PlantVariable> Decisive => [.. _decisive.Select(i => Variables[i])];

    /// <summary>Number of corners of the decisive variables; null: more than can be numbered.</summary>
    public long? CornerCount { get; }

    /// <summary>The corners that are looked at.</summary>
    public IReadOnlyList<PlantPoint> Corners { get; }

    /// <summary>The plant with some values.</summary>
    public PlantPoint At(double[] values) => new(values, new StaticPlant(_prepared.RealSetup(values), _prepared.Settings));

    /// <summary>Goes uphill from a plant, one quantity after the other, over limits and places between them.</summary>
    /// <param name="from">Where to begin.</param>
    /// <param name="height">What is to be as large as it can be.</param>
    /// <returns>A plant of which no single change makes it larger.</returns>
    public PlantPoint Climb(PlantPoint from, Func<PlantPoint, double> height)
    {
        PlantPoint best = from;
        double highest = height(from);
        bool moved = true;
        while (moved)
        {
            moved = false;
            foreach (int i in _decisive)
            {
                PlantVariable variable = Variables[i];
                foreach (double value in Places(variable))
                {
                    double[] values = [.. best.Values];
                    values[i] = value;
                    PlantPoint other = At(values);
                    double reached = height(other);
                    // The last digits of a root are no hill.
                    if (!(reached > highest + 1e-9 * Math.Abs(highest))) continue;
                    (best, highest, moved) = (other, reached, true);
                }
            }
        }

        return best;
    }

    private static IEnumerable<double> Places(PlantVariable variable) =>
        [variable.Low, .. Inside.Select(part => variable.Low + part * (variable.High - variable.Low)), variable.High];

    private bool Matters(int i)
    {
        PlantVariable variable = Variables[i];
        if (variable.Key == CaseKeys.StarterSections) return false;
        return !MarksWith(i, variable.Low).SequenceEqual(MarksWith(i, variable.High));
    }

    private double[] MarksWith(int i, double value)
    {
        double[] values = [.. _middle];
        values[i] = value;
        return At(values).Plant.Marks();
    }

    private PlantPoint[] CornersOf()
    {
        long count = Math.Min(CornerCount ?? long.MaxValue, MostCorners);
        // More than can be numbered: quantities beyond stay in the middle here, and the climb moves them.
        int[] varied = CornerCount == null ? _decisive[..61] : _decisive;
        FactorialSampling sampling = new(varied.Length, 2, 1);
        PlantPoint[] corners = new PlantPoint[count];
        for (long corner = 0; corner < count; corner++)
        {
            double[] values = [.. _middle];
            for (int d = 0; d < varied.Length; d++)
            {
                PlantVariable variable = Variables[varied[d]];
                values[varied[d]] = sampling.At(corner, d) > 0.5 ? variable.High : variable.Low;
            }

            corners[corner] = At(values);
        }

        return corners;
    }
}
