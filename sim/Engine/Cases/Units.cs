using System;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;

namespace StarterCtl.Engine.Cases;

/// <summary>Reads quantities such as "0.18 ohm" or "1150 rpm" as SI numbers.</summary>
/// <remarks>
/// The decimal sign is a point whatever the machine's language. The space before the unit may be left out, or be
/// several or a tab; factors of a unit are parted by a space, "·" or "*"; a square is written 2, ^2 or ²; micro is u or µ; ohm may be Ω.
/// </remarks>
public static partial class Units
{
    /// <summary>Reads a quantity.</summary>
    /// <param name="text">A number and its unit.</param>
    /// <param name="dimension">What it has to measure.</param>
    /// <returns>The SI value; always finite.</returns>
    /// <exception cref="FormatException">No quantity of that dimension; the message says what it is.</exception>
    public static double Parse(string text, Dimension dimension) =>
        TryParse(text, dimension, out double siValue, out string found)
            ? siValue
            : throw new FormatException($"found {found}; allowed: {Allowed(dimension)}");

    /// <summary>Reads a quantity, or says what stands there instead.</summary>
    /// <param name="text">A number and its unit.</param>
    /// <param name="dimension">What it has to measure.</param>
    /// <param name="siValue">The SI value, finite; 0 on failure.</param>
    /// <param name="found">On failure what was found, such as <c>"5 A", a current</c>; empty on success.</param>
    /// <returns>True when the text is a quantity of that dimension.</returns>
    public static bool TryParse(string text, Dimension dimension, out double siValue, out string found)
    {
        siValue = 0;
        if (!TrySplit(text, out double number, out string unitText, out found)) return false;

        Unit? unit = UnitTable.Find(unitText);
        found = Words.Quote(text);
        if (unitText.Length == 0) found += ", a number without a unit";
        else if (unitText == "%") found += ", a percentage";
        else if (unit is null) found += $", in the unknown unit {Words.Quote(unitText)}{NearestHint(unitText, dimension)}";
        else if (unit.Dimension != dimension) found += $", {Name(unit.Dimension)}";
        else if (!double.IsFinite(number * unit.Times / unit.Over)) found += ", too large a number";
        else
        {
            siValue = (number * unit.Times / unit.Over) + 0.0; // turns -0 into 0
            found = "";
            return true;
        }

        return false;
    }

    /// <summary>What a quantity of this dimension looks like, for a message.</summary>
    /// <param name="dimension">Any dimension.</param>
    /// <returns>Its name and units: "a resistance in ohm, mohm, uohm or kohm".</returns>
    public static string Allowed(Dimension dimension) =>
        Name(dimension) + " in "
        + Words.Or(UnitTable.All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Name));

    /// <summary>The name of a dimension with its article: "a resistance".</summary>
    /// <param name="dimension">Any dimension.</param>
    /// <returns>The name.</returns>
    public static string Name(Dimension dimension) => dimension switch
    {
        Dimension.Voltage => "a voltage",
        Dimension.Current => "a current",
        Dimension.Resistance => "a resistance",
        Dimension.Inductance => "an inductance",
        Dimension.Power => "a power",
        Dimension.Torque => "a torque",
        Dimension.Speed => "a speed",
        Dimension.Time => "a time",
        Dimension.Inertia => "a moment of inertia",
        Dimension.MachineConstant => "a machine constant",
        Dimension.ViscousTorque => "a torque per speed",
        Dimension.FanTorque => "a torque per speed squared",
        Dimension.Flux => "a flux",
        Dimension.Energy => "an energy",
        Dimension.Temperature => "a temperature",
        Dimension.ThermalCapacity => "a thermal capacity",
        Dimension.ThermalResistance => "a thermal resistance",
        Dimension.Length => "a length",
        Dimension.Area => "an area",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "not a dimension"),
    };

    /// <summary>The SI unit of a dimension, degC for a temperature.</summary>
    /// <param name="dimension">Any dimension.</param>
    public static string SiName(Dimension dimension) => UnitTable.All.First(unit => unit.Dimension == dimension && unit.Times == unit.Over).Name;

    /// <summary>Splits a text into its number and the rest, without looking at the unit.</summary>
    /// <returns>False, with what was found, when the text does not begin with a finite decimal number.</returns>
    internal static bool TrySplit(string text, out double number, out string unitText, out string found)
    {
        string trimmed = AnySpace().Replace(text, " ").Trim(' ', '\t');
        Match match = LeadingNumber().Match(trimmed);
        number = 0;
        unitText = "";
        found = Words.Quote(text);
        if (!match.Success)
        {
            bool isNotFinite = NotFinite().IsMatch(trimmed);
            found += isNotFinite ? ", which is not a finite number" : ", which does not begin with a number";
            return false;
        }

        string rest = trimmed[match.Length..];
        if (rest.StartsWith(','))
        {
            found += ", with a comma in the number (write a decimal point and no thousands separators)";
            return false;
        }

        number = double.Parse(match.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
        {
            found += ", too large a number";
            return false;
        }

        unitText = rest.TrimStart(' ', '\t');
        found = "";
        return true;
    }

    private static string NearestHint(string unitText, Dimension dimension) =>
        UnitTable.Nearest(unitText, dimension) is Unit nearest ? $" (the nearest is {Words.Quote(nearest.Name)})" : "";

    [GeneratedRegex(@"^[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?", RegexOptions.CultureInvariant)]
    private static partial Regex LeadingNumber();

    [GeneratedRegex(@"^[+-]?(?:nan|inf|infinity|∞)(?:\b|$)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NotFinite();

    // No-break, thin and narrow spaces come with text pasted from data sheets.
    [GeneratedRegex("[\u00A0\u2009\u202F]", RegexOptions.CultureInvariant)]
    private static partial Regex AnySpace();
}
