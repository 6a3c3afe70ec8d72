using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Finds where a function changes sign inside a span.</summary>
public static class RootFinder
{
    private const int MostSteps = 200;

    /// <summary>Regula falsi with the Illinois rule, held to a bracket; textbook method.</summary>
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
        int side = 0;
        for (int i = 0; i < MostSteps && high - low > tolerance; i++)
        {
            // Every third step bisects, so that a very crooked function cannot make the bracket stand still.
            double middle = i % 3 == 2 ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(middle > low && middle < high)) middle = (low + high) / 2;
            double value = function(middle);
            if (value == 0) return middle;
            if (value > 0 == atHigh > 0)
            {
                high = middle;
                atHigh = value;
                if (side == 1) atLow /= 2;
                side = 1;
            }
            else
            {
                low = middle;
                atLow = value;
                if (side == -1) atHigh /= 2;
                side = -1;
            }
        }

        return high;
    }
}
