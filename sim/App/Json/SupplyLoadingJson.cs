using System.Collections.Generic;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what a start does to bus and cable.</summary>
public sealed record SupplyLoadingJson(
    double BusOhms,
    double CableOhms,
    string? CableMaterial,
    IReadOnlyList<SupplyPoint> Points,
    double? PermittedDip,
    double? PermittedLineAmps,
    double? LargestRatedAmps,
    double? LargestDirectRatedAmps)
{
    /// <summary>The shape of a loading.</summary>
    public static SupplyLoadingJson Of(SupplyLoading supply) => new(
        supply.BusOhms,
        supply.CableOhms,
        supply.Cable?.Material.Name,
        supply.Points,
        supply.PermittedDip,
        supply.PermittedLineAmps,
        supply.LargestRatedAmps,
        supply.LargestDirectRatedAmps);
}
