using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Finds where a function changes sign inside a span.</summary>
public static class RootFinder
{
    private const int MostSteps = 200;

    /// <summary>
    /// Interpolate, truncate, project: as fast as the secant on a smooth function, and at most one step more than halving on any.
    /// </summary>
    /// <remarks>Oliveira and Takahashi, ACM Transactions on Mathematical Software 47(1), 2021 (from memory), with k1 = 0.2, k2 = 2, n0 = 1.</remarks>
    /// <param name="function">Continuous; of different sign (or zero) at the two ends.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="tolerance">Width of the final bracket.</param>
    /// <returns>The upper end of the final bracket: just behind the crossing.</returns>
    public static double Find(Func<double, double> function, double low, double high, double tolerance)
    {
        double atLow = function(low), atHigh = function(high);
        // The loop below keeps the sign of the upper end, and 0 has none.
        if (atHigh == 0) return high;
        double reach = tolerance, truncation = 0.2 / (high - low);
        while (reach < high - low) reach *= 2;
        for (int i = 0; i < MostSteps && high - low > tolerance; i++)
        {
            double width = high - low, half = low + width / 2;
            double secant = (low * atHigh - high * atLow) / (atHigh - atLow);
            // A function that is 0 at the lower end but for rounding may have one sign at both.
            if (!(secant > low && secant < high)) secant = half;
            double toHalf = half - secant, truncated = truncation * width * width;
            double middle = truncated <= Math.Abs(toHalf) ? secant + Math.CopySign(truncated, toHalf) : half;
            // Never so far from the middle that halving from here on would need more steps than it would have from the beginning.
            double slack = Math.Max(0, reach - width / 2);
            if (Math.Abs(middle - half) > slack) middle = half - Math.CopySign(slack, toHalf);
            if (!(middle > low && middle < high)) middle = half;
            reach /= 2;
            double value = function(middle);
            if (value == 0) return middle;
            if (value > 0 == atHigh > 0)
            {
                high = middle;
                atHigh = value;
            }
            else
            {
                low = middle;
                atLow = value;
            }
        }

        return high;
    }
}
