using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Cases;

/// <summary>Every unit that a case file may use, in the order in which messages list them.</summary>
internal static class UnitTable
{
    /// <summary>Mechanical horsepower of 550 ft lbf/s, W, as motor plates round it.</summary>
    private const double HorsepowerWatts = 745.7;

    /// <summary>Metric horsepower, 75 kgf m/s, W; exact.</summary>
    private const double MetricHorsepowerWatts = 735.49875;

    /// <summary>Pound-force foot, N m, from the exact pound, foot and standard gravity.</summary>
    private const double PoundFootNewtonMetres = 1.3558179483314004;

    /// <summary>Pound square foot, kg m2, from the exact pound and foot.</summary>
    private const double PoundSquareFootKilogramSquareMetres = 0.45359237 * 0.3048 * 0.3048;

    internal static readonly IReadOnlyList<Unit> All =
    [
        new("V", Dimension.Voltage, 1, 1),
        new("mV", Dimension.Voltage, 1, 1e3),
        new("kV", Dimension.Voltage, 1e3, 1),
        new("A", Dimension.Current, 1, 1),
        new("mA", Dimension.Current, 1, 1e3),
        new("kA", Dimension.Current, 1e3, 1),
        new("ohm", Dimension.Resistance, 1, 1),
        new("mohm", Dimension.Resistance, 1, 1e3),
        new("uohm", Dimension.Resistance, 1, 1e6),
        new("kohm", Dimension.Resistance, 1e3, 1),
        new("H", Dimension.Inductance, 1, 1),
        new("mH", Dimension.Inductance, 1, 1e3),
        new("uH", Dimension.Inductance, 1, 1e6),
        new("W", Dimension.Power, 1, 1),
        new("kW", Dimension.Power, 1e3, 1),
        new("MW", Dimension.Power, 1e6, 1),
        new("hp", Dimension.Power, HorsepowerWatts, 1),
        new("PS", Dimension.Power, MetricHorsepowerWatts, 1),
        new("N m", Dimension.Torque, 1, 1),
        new("mN m", Dimension.Torque, 1, 1e3),
        new("kN m", Dimension.Torque, 1e3, 1),
        new("lb ft", Dimension.Torque, PoundFootNewtonMetres, 1),
        new("rpm", Dimension.Speed, Math.PI, 30),
        new("r/min", Dimension.Speed, Math.PI, 30),
        new("rad/s", Dimension.Speed, 1, 1),
        new("deg/s", Dimension.Speed, Math.PI, 180),
        new("s", Dimension.Time, 1, 1),
        new("ms", Dimension.Time, 1, 1e3),
        new("us", Dimension.Time, 1, 1e6),
        new("min", Dimension.Time, 60, 1),
        new("h", Dimension.Time, 3600, 1),
        new("kg m2", Dimension.Inertia, 1, 1),
        new("g m2", Dimension.Inertia, 1, 1e3),
        new("kg cm2", Dimension.Inertia, 1, 1e4),
        new("lb ft2", Dimension.Inertia, PoundSquareFootKilogramSquareMetres, 1),
        new("V s/rad", Dimension.MachineConstant, 1, 1),
        new("V s", Dimension.MachineConstant, 1, 1),
        new("N m/A", Dimension.MachineConstant, 1, 1),
        new("V/krpm", Dimension.MachineConstant, 30, 1e3 * Math.PI),
        new("N m s/rad", Dimension.ViscousTorque, 1, 1),
        new("N m/krpm", Dimension.ViscousTorque, 30, 1e3 * Math.PI),
        new("N m s2/rad2", Dimension.FanTorque, 1, 1),
        new("Wb", Dimension.Flux, 1, 1),
        new("mWb", Dimension.Flux, 1, 1e3),
        new("J", Dimension.Energy, 1, 1),
        new("kJ", Dimension.Energy, 1e3, 1),
        new("MJ", Dimension.Energy, 1e6, 1),
        new("degC", Dimension.Temperature, 1, 1),
        new("J/K", Dimension.ThermalCapacity, 1, 1),
        new("kJ/K", Dimension.ThermalCapacity, 1e3, 1),
        new("K/W", Dimension.ThermalResistance, 1, 1),
        new("K/kW", Dimension.ThermalResistance, 1, 1e3),
        new("m", Dimension.Length, 1, 1),
        new("km", Dimension.Length, 1e3, 1),
        new("ft", Dimension.Length, 0.3048, 1),
        new("mm2", Dimension.Area, 1, 1e6),
        new("cm2", Dimension.Area, 1, 1e4),
        new("m2", Dimension.Area, 1, 1),
    ];

    // Units by the words and abbreviations of everyday speech, in lower case and singular.
    private static readonly Dictionary<string, string> Spoken = new()
    {
        ["volt"] = "V",
        ["amp"] = "A",
        ["ampere"] = "A",
        ["henry"] = "H",
        ["watt"] = "W",
        ["horsepower"] = "hp",
        ["newton metre"] = "N m",
        ["newton meter"] = "N m",
        ["rev/min"] = "rpm",
        ["sec"] = "s",
        ["second"] = "s",
        ["minute"] = "min",
        ["hour"] = "h",
        ["hr"] = "h",
        ["weber"] = "Wb",
        ["joule"] = "J",
        ["celsius"] = "degC",
    };

    private static readonly (string Word, string Letter)[] Prefixes = [("milli", "m"), ("micro", "u"), ("kilo", "k"), ("mega", "M")];

    private static readonly Dictionary<string, Unit> ByName = All.ToDictionary(unit => unit.Name);

    /// <summary>Finds a unit in any of its spellings; null when there is none. Upper and lower case differ.</summary>
    internal static Unit? Find(string spelling) => ByName.GetValueOrDefault(Canonical(spelling));

    /// <summary>The unit that an unknown spelling most likely means, or null when none is near.</summary>
    /// <param name="spelling">A spelling that <see cref="Find"/> does not know.</param>
    /// <param name="dimension">What the unit has to measure.</param>
    internal static Unit? Nearest(string spelling, Dimension dimension)
    {
        string lower = Canonical(spelling).ToLowerInvariant();
        string singular = lower.Length > 2 && lower.EndsWith('s') ? lower[..^1] : lower;
        Unit[] units = [.. All.Where(unit => unit.Dimension == dimension)];
        Unit? nearest = Array.Find(units, unit => unit.Name == InSymbols(singular))
            ?? Array.Find(units, unit => Lower(unit) == lower)
            ?? Array.Find(units, unit => Lower(unit) == singular)
            ?? units.Where(unit => IsNear(lower, Lower(unit))).MinBy(unit => Words.Edits(lower, Lower(unit)));

        // A capital M is mega: to answer it with milli would be a billion off.
        bool isMegaForMilli = spelling.StartsWith('M') && nearest is { Over: 1e3 } && nearest.Name.StartsWith('m');
        return isMegaForMilli ? null : nearest;
    }

    private static string Lower(Unit unit) => unit.Name.ToLowerInvariant();

    // Units are short: a hint that changes half of one is a guess.
    private static bool IsNear(string spelling, string name) =>
        Math.Abs(spelling.Length - name.Length) <= 2 && 2 * Words.Edits(spelling, name) < Math.Max(spelling.Length, name.Length);

    // "millivolt" to "mV", "volt" to "V"; any other word stays as it is.
    private static string InSymbols(string word)
    {
        (string Word, string Letter) prefix = Array.Find(Prefixes, prefix => word.StartsWith(prefix.Word, StringComparison.Ordinal));
        string rest = word[(prefix.Word?.Length ?? 0)..];
        return prefix.Letter + Spoken.GetValueOrDefault(rest, rest);
    }

    /// <summary>Rewrites a spelling as the table has it: squares as 2, factors parted by one space.</summary>
    private static string Canonical(string spelling)
    {
        StringBuilder canonical = new(spelling.Length);
        foreach (char letter in spelling)
        {
            switch (letter)
            {
                case '°': canonical.Append("deg"); break;
                case '²': canonical.Append('2'); break;
                case '·' or '⋅' or '*': canonical.Append(' '); break;
                case '\u00B5' or '\u03BC': canonical.Append('u'); break;   // micro sign, Greek mu
                case '\u03A9' or '\u2126': canonical.Append("ohm"); break; // Greek omega, ohm sign
                default: canonical.Append(letter); break;
            }
        }

        canonical.Replace("^2", "2").Replace("Nm", "N m").Replace("kgm2", "kg m2");
        return canonical.ToString();
    }
}
