using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace StarterCtl.Engine.Parts;

/// <summary>Preferred values of resistors.</summary>
/// <remarks>Source: IEC 60063, see tests/published/SOURCES.md, CHK-23.</remarks>
public static class PreferredValues
{
    // Not the rounded powers of ten: eight of them are older than the rule. E12 is every second, E6 every fourth of them.
    private static readonly int[] TwentyFour =
    [
        10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
    ];

    /// <summary>The values of one decade.</summary>
    /// <param name="series">The series.</param>
    /// <returns>Whole numbers that rise: of two digits from 10 on up to E24, of three digits from 100 on above it.</returns>
    public static IReadOnlyList<int> Decade(PreferredSeries series)
    {
        int count = (int)series;
        return count <= TwentyFour.Length
            ? [.. TwentyFour.Where((_, i) => i % (TwentyFour.Length / count) == 0)]
            : [.. Enumerable.Range(0, count).Select(i => (int)Math.Round(100 * Math.Pow(10, (double)i / count)))];
    }

    /// <summary>The values from one resistance to another.</summary>
    /// <param name="series">The series.</param>
    /// <param name="fromOhms">Lowest, ohm, above 0.</param>
    /// <param name="toOhms">Highest, ohm.</param>
    /// <returns>Ohms that rise, each the double that its decimal text gives.</returns>
    public static IReadOnlyList<double> Between(PreferredSeries series, double fromOhms, double toOhms)
    {
        IReadOnlyList<int> decade = Decade(series);
        int shift = (int)series > TwentyFour.Length ? 2 : 1;
        List<double> values = [];
        for (int exponent = (int)Math.Floor(Math.Log10(fromOhms)) - 1; Math.Pow(10, exponent) <= toOhms; exponent++)
        {
            foreach (int digits in decade)
            {
                double ohms = double.Parse(string.Create(CultureInfo.InvariantCulture, $"{digits}E{exponent - shift}"), CultureInfo.InvariantCulture);
                if (ohms >= fromOhms && ohms <= toOhms) values.Add(ohms);
            }
        }

        return values;
    }

    /// <summary>The value nearest to a resistance by ratio.</summary>
    /// <param name="series">The series.</param>
    /// <param name="ohms">Resistance, ohm, above 0.</param>
    public static double Nearest(PreferredSeries series, double ohms) =>
        Between(series, ohms / 3, ohms * 3).MinBy(value => Math.Abs(Math.Log(value / ohms)));
}
