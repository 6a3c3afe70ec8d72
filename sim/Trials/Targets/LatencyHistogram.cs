using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Trials.Targets;

/// <summary>How often which latency occurred, in classes that grow by a twentieth each: constant memory however long a trial lasts.</summary>
public sealed class LatencyHistogram
{
    private const double LeastSeconds = 1e-6;
    private const double Growth = 1.05;
    private static readonly double[] ClassEnds = [.. Enumerable.Range(-6, 8).SelectMany(power => new[] { Math.Pow(10, power), 2 * Math.Pow(10, power), 5 * Math.Pow(10, power) })];

    // The last class begins at 10 s; what takes longer is no exchange any more.
    private readonly long[] _counts = new long[1 + (int)Math.Ceiling(Math.Log(10 / LeastSeconds) / Math.Log(Growth))];

    /// <summary>Number of latencies.</summary>
    public long Count { get; private set; }

    /// <summary>The shortest, s; not a number without any.</summary>
    public double LeastLatencySeconds { get; private set; } = double.NaN;

    /// <summary>The longest, s; likewise.</summary>
    public double LargestLatencySeconds { get; private set; } = double.NaN;

    /// <summary>Takes a latency in.</summary>
    /// <param name="seconds">It, s, 0 or more.</param>
    public void Add(double seconds)
    {
        int index = seconds <= LeastSeconds ? 0 : (int)Math.Ceiling(Math.Log(seconds / LeastSeconds) / Math.Log(Growth));
        _counts[Math.Min(index, _counts.Length - 1)]++;
        LeastLatencySeconds = Count == 0 ? seconds : Math.Min(LeastLatencySeconds, seconds);
        LargestLatencySeconds = Count == 0 ? seconds : Math.Max(LargestLatencySeconds, seconds);
        Count++;
    }

    /// <summary>The latency that a part of all do not exceed: the upper end of its class, at most 5 % too long.</summary>
    /// <param name="part">Above 0, up to 1.</param>
    /// <returns>s; not a number without any.</returns>
    public double Quantile(double part)
    {
        long wanted = (long)Math.Ceiling(part * Count), seen = 0;
        for (int i = 0; i < _counts.Length; i++)
        {
            seen += _counts[i];
            if (seen >= wanted && seen > 0) return Math.Min(UpTo(i), LargestLatencySeconds);
        }

        return double.NaN;
    }

    /// <summary>Classes between one, two and five of each power of ten, with how many fell into each; from the first that has any to the last.</summary>
    public IReadOnlyList<LatencyClass> Classes()
    {
        List<LatencyClass> classes = [];
        int next = 0;
        foreach (double end in ClassEnds)
        {
            long count = 0;
            while (next < _counts.Length && UpTo(next) <= end * (1 + 1e-9)) count += _counts[next++];
            if (count > 0 || (classes.Count > 0 && classes.Sum(entry => entry.Count) < Count)) classes.Add(new LatencyClass(end, count));
        }

        return classes;
    }

    private static double UpTo(int index) => LeastSeconds * Math.Pow(Growth, index);
}
