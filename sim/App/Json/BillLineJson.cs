using StarterCtl.Engine.Parts;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a line of the bill. Extend, never rename.</summary>
public sealed record BillLineJson(string Part, double Ohms, int Count, decimal? UnitPrice, decimal? Price)
{
    /// <summary>The shape of a line.</summary>
    public static BillLineJson Of(BillLine line) => new(line.Part.Name, line.Part.Ohms, line.Count, line.Part.Price, line.Price);
}
