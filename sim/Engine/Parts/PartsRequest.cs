using System.Collections.Generic;

namespace StarterCtl.Engine.Parts;

/// <summary>What sections may be made of, and what matters.</summary>
public sealed record PartsRequest
{
    /// <summary>Most parts that a section may have.</summary>
    public const int MostPartsPerSection = 4;

    /// <summary>Part by which a current that the case leaves open may differ from the computed one, unless asked otherwise.</summary>
    public const double UsualGive = 0.1;

    /// <summary>Starts an hour that parts are held against, unless asked otherwise.</summary>
    public const double UsualStartsPerHour = 6;

    /// <summary>Preferred values to choose from; null: a stock list.</summary>
    public PreferredSeries? Series { get; init; }

    /// <summary>Stock list to choose from; null: preferred values.</summary>
    public StockList? Stock { get; init; }

    /// <summary>Most parts in a section, 1 to <see cref="MostPartsPerSection"/>.</summary>
    public int PartsPerSection { get; init; } = 1;

    /// <summary>What there is to be least of.</summary>
    public PartsObjective Objective { get; init; }

    /// <summary>Starts an hour that the ratings are held against, above 0.</summary>
    public double StartsPerHour { get; init; } = UsualStartsPerHour;

    /// <summary>Part by which a current that the case leaves open may differ from the computed one, 0 to below 1.</summary>
    public double Give { get; init; } = UsualGive;

    /// <summary>Where the parts come from, in words.</summary>
    public string SourceText => Series is PreferredSeries series ? $"{series} (IEC 60063)" : Stock!.FileName;

    /// <summary>The parts within a range of resistance.</summary>
    internal IReadOnlyList<Part> PartsBetween(double fromOhms, double toOhms)
    {
        if (Stock != null) return Stock.Parts;
        List<Part> parts = [];
        foreach (double ohms in PreferredValues.Between(Series!.Value, fromOhms, toOhms)) parts.Add(new Part(Text.Number(ohms) + " ohm", ohms, null, null, null));
        return parts;
    }
}
