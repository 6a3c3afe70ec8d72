using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Moves words at the ends of lines apart where the lines lie too close together.</summary>
internal static class LabelSpread
{
    /// <summary>Places for words, in the order given.</summary>
    /// <param name="levels">Where the words belong.</param>
    /// <param name="gap">Least distance between two of them, in the same unit.</param>
    /// <param name="floor">Nothing goes below this.</param>
    /// <returns>For every level a place; the lower of two gives way downwards as far as the floor lets it.</returns>
    public static double[] Apart(IReadOnlyList<double> levels, double gap, double floor)
    {
        double[] places = [.. levels];
        int[] fromTop = [.. Enumerable.Range(0, places.Length).OrderByDescending(i => levels[i])];
        for (int i = 1; i < fromTop.Length; i++) places[fromTop[i]] = Math.Min(places[fromTop[i]], places[fromTop[i - 1]] - gap);
        double least = floor;
        foreach (int i in fromTop.Reverse())
        {
            places[i] = Math.Max(places[i], least);
            least = places[i] + gap;
        }

        return places;
    }
}
