using System;

namespace StarterCtl.Engine.Solving;

/// <summary>The first zero that a search meets on its way from one value to another.</summary>
internal static class FirstRoot
{
    // Of the larger end: a few units in the last place.
    private const double RelativeTolerance = 4e-15;

    private const int Steps = 128;

    /// <summary>Finds the first change of sign.</summary>
    /// <param name="function">Continuous.</param>
    /// <param name="from">Where the search begins.</param>
    /// <param name="to">Where it ends, above or below.</param>
    /// <param name="isSingle">True where there is one change of sign at most, so that no steps in between are needed.</param>
    /// <returns>The zero; null when the function keeps its sign at every step.</returns>
    public static double? Find(Func<double, double> function, double from, double to, bool isSingle)
    {
        double before = from, atBefore = function(from);
        if (atBefore == 0) return from;
        int steps = isSingle ? 1 : Steps;
        for (int i = 1; i <= steps; i++)
        {
            double after = i == steps ? to : from + (to - from) * i / steps;
            double atAfter = function(after);
            if (atAfter == 0) return after;
            if (atAfter > 0 != atBefore > 0)
            {
                double low = Math.Min(before, after), high = Math.Max(before, after);
                return RootFinder.Find(function, low, high, RelativeTolerance * Math.Max(Math.Abs(low), Math.Abs(high)));
            }

            before = after;
            atBefore = atAfter;
        }

        return null;
    }
}
