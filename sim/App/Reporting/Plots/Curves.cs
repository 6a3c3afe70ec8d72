using System;
using System.Collections.Generic;
using OxyPlot;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Leaves out the points of a curve that nobody would see, so that a page of plots stays small.</summary>
internal static class Curves
{
    // A tenth of a unit of the drawing is below what any screen or printer shows.
    private const double Tolerance = 0.1;

    /// <summary>
    /// Keeps the points that carry the curve (Ramer, Douglas and Peucker). The farthest point of every stretch is kept as
    /// it is, so peaks stay exact.
    /// </summary>
    /// <param name="points">The curve.</param>
    /// <param name="unitsPerX">Units of the drawing per unit of x.</param>
    /// <param name="unitsPerY">Units of the drawing per unit of y.</param>
    public static IReadOnlyList<DataPoint> Thin(IReadOnlyList<DataPoint> points, double unitsPerX, double unitsPerY)
    {
        if (points.Count < 3) return points;
        bool[] keep = new bool[points.Count];
        keep[0] = keep[^1] = true;
        Stack<(int From, int To)> stretches = new();
        stretches.Push((0, points.Count - 1));
        while (stretches.TryPop(out (int From, int To) stretch))
        {
            int farthest = Farthest(points, stretch.From, stretch.To, unitsPerX, unitsPerY);
            if (farthest < 0) continue;
            keep[farthest] = true;
            stretches.Push((stretch.From, farthest));
            stretches.Push((farthest, stretch.To));
        }

        List<DataPoint> kept = [];
        for (int i = 0; i < keep.Length; i++)
        {
            if (keep[i]) kept.Add(points[i]);
        }

        return kept;
    }

    private static int Farthest(IReadOnlyList<DataPoint> points, int from, int to, double unitsPerX, double unitsPerY)
    {
        DataPoint a = points[from];
        double alongX = (points[to].X - a.X) * unitsPerX, alongY = (points[to].Y - a.Y) * unitsPerY;
        double length = Math.Sqrt(alongX * alongX + alongY * alongY);
        int farthest = -1;
        double most = Tolerance;
        for (int i = from + 1; i < to; i++)
        {
            double x = (points[i].X - a.X) * unitsPerX, y = (points[i].Y - a.Y) * unitsPerY;
            double distance = length > 0 ? Math.Abs(x * alongY - y * alongX) / length : Math.Sqrt(x * x + y * y);
            if (distance <= most) continue;
            most = distance;
            farthest = i;
        }

        return farthest;
    }
}
