using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Moves words at the ends of lines apart where the lines lie too close together.</summary>
internal static class LabelSpread
{
    /// <summary>Places for words, in the order given. Words keep the order of their lines and move as little as they can.</summary>
    /// <param name="levels">Where the words belong.</param>
    /// <param name="gap">Least distance between two of them, in the same unit.</param>
    /// <param name="floor">Nothing goes below this.</param>
    /// <param name="ceiling">Nothing goes above this as long as there is room for all.</param>
    public static double[] Apart(IReadOnlyList<double> levels, double gap, double floor, double ceiling)
    {
        int[] fromBelow = [.. Enumerable.Range(0, levels.Count).OrderBy(i => levels[i])];

        // With the gaps taken out the places must only not fall: neighbours out of order share their mean.
        List<(double Sum, int Count)> pools = [];
        for (int i = 0; i < fromBelow.Length; i++)
        {
            (double Sum, int Count) pool = (levels[fromBelow[i]] - i * gap, 1);
            while (pools.Count > 0 && pools[^1].Sum / pools[^1].Count > pool.Sum / pool.Count)
            {
                pool = (pool.Sum + pools[^1].Sum, pool.Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }

            pools.Add(pool);
        }

        double highest = ceiling - (levels.Count - 1) * gap;
        double[] places = new double[levels.Count];
        int next = 0;
        foreach ((double sum, int count) in pools)
        {
            for (int i = 0; i < count; i++, next++) places[fromBelow[next]] = Math.Max(floor, Math.Min(highest, sum / count)) + next * gap;
        }

        return places;
    }
}
