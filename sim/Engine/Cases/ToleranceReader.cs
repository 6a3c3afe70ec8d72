using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Reads what stands behind a key of [tolerances].</summary>
internal sealed partial class ToleranceReader(ProblemList problems)
{
    // Limits of a normal tolerance lie this many standard deviations from its middle.
    private const double NormalSpread = 3;

    /// <summary>Reads a tolerance; null after a problem, which is in the list then.</summary>
    /// <param name="entry">The key of the quantity, and the tolerance.</param>
    internal CaseTolerance? Read(CaseEntry entry)
    {
        if (entry.Value is not StringValueSyntax { Value: string text }) return Refuse(entry, CaseValueReader.Describe(entry.Value));
        Match match = Parts().Match(text);
        ToleranceShape shape = match.Groups["shape"].Value switch
        {
            "normal" => ToleranceShape.Normal,
            "triangular" => ToleranceShape.Triangular,
            _ => ToleranceShape.Uniform,
        };
        string low = match.Groups["low"].Value;
        return match.Groups["high"] is { Success: true, Value: string high }
            ? ReadLimits(entry, text, shape, low, high)
            : ReadSpread(entry, text, shape, low);
    }

    private CaseTolerance? ReadLimits(CaseEntry entry, string text, ToleranceShape shape, string lowText, string highText)
    {
        if (ReadNumber(entry, lowText) is not (double low, bool isLowPercent) || ReadNumber(entry, highText) is not (double high, bool isHighPercent)) return null;
        if (isLowPercent != isHighPercent) return Refuse(entry, $"{Words.Quote(text)}, one limit in percent and one not");
        if (!isLowPercent && entry.Key.Kind == CaseValueKind.Quantities) return Refuse(entry, Words.Quote(text));
        if (low > high) return Refuse(entry, $"{Words.Quote(text)}, the low limit above the high one");
        if (low == high) return Refuse(entry, $"{Words.Quote(text)}, which leaves nothing between its limits");
        return new CaseTolerance(entry.Key, entry.Line, text, shape, isLowPercent ? ToleranceBasis.Ratio : ToleranceBasis.Value, low, high);
    }

    // One number is the deviation to both sides; of a normal tolerance it is the standard deviation.
    private CaseTolerance? ReadSpread(CaseEntry entry, string text, ToleranceShape shape, string spreadText)
    {
        if (ReadNumber(entry, spreadText) is not (double spread, bool isPercent)) return null;
        if (!isPercent && PlantKeys.IsScaled(entry.Key)) return Refuse(entry, Words.Quote(text));
        if (!(spread > 0)) return Refuse(entry, $"{Words.Quote(text)}, a deviation that is not above 0");
        double most = shape == ToleranceShape.Normal ? NormalSpread * spread : spread;
        return new CaseTolerance(entry.Key, entry.Line, text, shape, isPercent ? ToleranceBasis.Ratio : ToleranceBasis.Deviation, -most, most);
    }

    private (double Number, bool IsPercent)? ReadNumber(CaseEntry entry, string text)
    {
        CaseKey key = entry.Key;
        bool isNumber = Units.TrySplit(text, out double number, out string unit, out string found);
        if (isNumber && unit == "%")
        {
            if (key.Dimension != Dimension.Temperature) return (number / 100, true);
            Refuse(entry, $"{Words.Quote(text)}, a percentage of a temperature");
            return null;
        }

        if (key.Dimension is Dimension dimension)
        {
            if (Units.TryParse(text, dimension, out double siValue, out found)) return (siValue, false);
        }
        else if (isNumber && unit.Length == 0) return (number, false);
        else if (isNumber) found = $"{Words.Quote(text)}, with a unit";

        Refuse(entry, found, key.Dimension is Dimension measured ? $"{PlantKeys.Allowed(key)}; {Units.Allowed(measured)}" : null);
        return null;
    }

    private CaseTolerance? Refuse(CaseEntry entry, string found, string? allowed = null)
    {
        problems.Add(entry.Line, $"{CaseTolerance.Table}.{entry.Key.Path}", found, allowed ?? PlantKeys.Allowed(entry.Key));
        return null;
    }

    [GeneratedRegex(@"^\s*(?:(?<shape>uniform|normal|triangular)\s+)?(?<low>.*?)(?:\s+to\s+(?<high>.*?))?\s*$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Parts();
}
