using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.Sensitivity;

/// <summary>
/// Variance-based sensitivity indices from the outcomes of groups of rows; see <see cref="SensitivitySampling"/>. The same outcomes in the same
/// order give the same bits on any number of cores.
/// </summary>
/// <remarks>
/// All from memory: I. M. Sobol', Mathematical Modelling and Computational Experiment 1 (1993), 407-414, defines the indices. First order: Saltelli and
/// others (2010), table 2, estimator (b), with the mean taken off, for which its error grows with the outcome's size otherwise. Total:
/// M. J. W. Jansen, Computer Physics Communications 117 (1999), 35-43. Bounds are percentiles of a bootstrap over the points: G. E. B. Archer,
/// A. Saltelli and I. M. Sobol', J. Statist. Comput. Simul. 58 (1997), 99-120.
/// </remarks>
public sealed class VarianceIndices
{
    private const int Resamples = 1000;
    private const ulong ResampleStream = 1UL << 41;

    // An outcome whose values differ by rounding only.
    private const double LeastSpread = 1e-9;

    // Sums of a point: its mean, its mean square, then two for each input.
    private const int OwnTerms = 2;

    private readonly double[] _terms;
    private readonly int _width;
    private readonly int _points;

    private VarianceIndices(double[] terms, int width, int seed, double confidence)
    {
        _terms = terms;
        _width = width;
        _points = terms.Length / width;
        double[] sums = new double[width];
        for (int point = 0; point < _points; point++) AddTo(sums, point);
        double[] indices = IndicesOf(sums);
        double[][] resampled = new double[Resamples][];
        Parallel.For(0, Resamples, number => resampled[number] = Resampled(seed, number));
        IndexEstimate[] all = [.. indices.Select((index, i) => Bounded(index, [.. resampled.Select(one => one[i]).Where(double.IsFinite).Order()], confidence))];
        FirstOrder = [.. all.Where((_, i) => i % 2 == 0)];
        Total = [.. all.Where((_, i) => i % 2 == 1)];
    }

    /// <summary>Share of the variance that each input causes alone.</summary>
    public IReadOnlyList<IndexEstimate> FirstOrder { get; }

    /// <summary>Share that each input causes alone and together with others.</summary>
    public IReadOnlyList<IndexEstimate> Total { get; }

    /// <summary>Estimates the indices of all inputs.</summary>
    /// <param name="outcomes">Outcomes in groups, one after the other: of A, of B, of A with each input from B; every one finite.</param>
    /// <param name="inputs">Number of inputs; a group has two outcomes more.</param>
    /// <param name="seed">From which the resamples of the bootstrap follow.</param>
    /// <param name="confidence">Probability with which bounds enclose the true index if points are independent; those of Sobol's sequence err by less.</param>
    /// <returns>The indices; null: the outcome does not vary.</returns>
    public static VarianceIndices? Of(ReadOnlySpan<double> outcomes, int inputs, int seed, double confidence)
    {
        int group = inputs + 2, width = OwnTerms + 2 * inputs, points = outcomes.Length / group;
        double sum = 0, least = double.PositiveInfinity, most = double.NegativeInfinity;
        for (int point = 0; point < points; point++)
        {
            double a = outcomes[point * group], b = outcomes[point * group + 1];
            sum += (a + b) / 2;
            least = Math.Min(least, Math.Min(a, b));
            most = Math.Max(most, Math.Max(a, b));
        }

        if (points == 0 || most - least <= LeastSpread * Math.Max(Math.Abs(least), Math.Abs(most))) return null;
        double mean = sum / points;
        double[] terms = new double[points * width];
        for (int point = 0; point < points; point++) Fill(terms.AsSpan(point * width, width), outcomes.Slice(point * group, group), mean);
        return new VarianceIndices(terms, width, seed, confidence);
    }

    private static void Fill(Span<double> terms, ReadOnlySpan<double> group, double mean)
    {
        double a = group[0] - mean, b = group[1] - mean;
        terms[0] = (a + b) / 2;
        terms[1] = (a * a + b * b) / 2;
        for (int input = 0; input < group.Length - 2; input++)
        {
            double step = group[2 + input] - mean - a;
            terms[OwnTerms + 2 * input] = b * step;
            terms[OwnTerms + 2 * input + 1] = step * step / 2;
        }
    }

    private void AddTo(double[] sums, int point)
    {
        ReadOnlySpan<double> terms = _terms.AsSpan(point * _width, _width);
        for (int i = 0; i < sums.Length; i++) sums[i] += terms[i];
    }

    private double[] Resampled(int seed, int number)
    {
        RandomNumbers random = new(SeedMix.Bits(seed, ResampleStream, (ulong)number));
        double[] sums = new double[_width];
        for (int drawn = 0; drawn < _points; drawn++) AddTo(sums, (int)Math.BigMul(random.Next(), (ulong)_points, out _));
        return IndicesOf(sums);
    }

    // First order and total of each input in turn.
    private double[] IndicesOf(double[] sums)
    {
        double mean = sums[0] / _points, variance = sums[1] / _points - mean * mean;
        return Array.ConvertAll(sums[OwnTerms..], sum => sum / _points / variance);
    }

    private static IndexEstimate Bounded(double index, double[] sorted, double confidence)
    {
        double tail = (1 - confidence) / 2;
        return new IndexEstimate(index, At(tail), At(1 - tail));

        double At(double part) => sorted[Math.Clamp((int)Math.Ceiling(part * sorted.Length), 1, sorted.Length) - 1];
    }
}
