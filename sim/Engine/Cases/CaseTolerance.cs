namespace StarterCtl.Engine.Cases;

/// <summary>By how much a quantity of the real plant may differ from what the case says, as written.</summary>
/// <param name="Key">The quantity; one of <see cref="PlantKeys.All"/>.</param>
/// <param name="Line">Line of the tolerance, counted from 1.</param>
/// <param name="Written">As in the file, without quotes.</param>
/// <param name="Shape">How likely its values are.</param>
/// <param name="Basis">What the limits are counted from.</param>
/// <param name="Low">Lower limit: SI, or a part of the nominal value.</param>
/// <param name="High">Upper limit, above the lower.</param>
public sealed record CaseTolerance(CaseKey Key, int Line, string Written, ToleranceShape Shape, ToleranceBasis Basis, double Low, double High)
{
    /// <summary>The table in which tolerances stand.</summary>
    internal const string Table = "tolerances";

    /// <summary>How its key stands in the file: tolerances.supply.voltage.</summary>
    public string Path => $"{Table}.{Key.Path}";
}
