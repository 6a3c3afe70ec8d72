using System;
using System.Collections.Generic;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Moves labels of level lines apart where the lines lie too close together.</summary>
internal static class LabelSpread
{
    /// <summary>Places for labels.</summary>
    /// <param name="levels">Where the labels belong, rising.</param>
    /// <param name="gap">Least distance between two of them, in the same unit.</param>
    /// <returns>Places that rise by the gap at least, each as near to its level as the one above allows.</returns>
    public static double[] Apart(IReadOnlyList<double> levels, double gap)
    {
        double[] places = [.. levels];
        for (int i = places.Length - 2; i >= 0; i--) places[i] = Math.Min(places[i], places[i + 1] - gap);
        return places;
    }
}
