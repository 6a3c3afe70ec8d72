using System.Globalization;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Runs;

/// <summary>One number of the real plant that may differ from the nominal case, with its limits. SI units.</summary>
/// <param name="Key">The key of the case file.</param>
/// <param name="Item">Number of a value in a list, counted from 0; -1: all there is.</param>
/// <param name="Nominal">What the case means it to be, computed values included; 1 where the values of a curve differ by a common factor.</param>
/// <param name="Shape">How likely its values are; the peak of a triangular one is at <paramref name="Nominal"/>.</param>
/// <param name="Low">Least value.</param>
/// <param name="High">Largest value, above the least.</param>
public sealed record PlantVariable(CaseKey Key, int Item, double Nominal, ToleranceShape Shape, double Low, double High)
{
    /// <summary>The quantity's path, an item of a list counted from 1: starter.sections[1].</summary>
    public string Path { get; } = Item < 0 ? Key.Path : string.Create(CultureInfo.InvariantCulture, $"{Key.Path}[{Item + 1}]");

    /// <summary>Its SI unit, degC for a temperature; empty for ratios and factors.</summary>
    public string Unit { get; } = PlantKeys.IsScaled(Key) || Key.Dimension is not Dimension dimension ? "" : Units.SiName(dimension);
}
