using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of the choice of a trip class.</summary>
public sealed record OverloadJson(double SettingAmps, string? Chosen, string Why, string? Set, IReadOnlyList<TripClassJson> Classes)
{
    /// <summary>The shape of a choice.</summary>
    public static OverloadJson Of(OverloadChoice choice) => new(
        choice.SettingAmps, choice.Chosen?.Name, choice.Why, choice.Set?.Name, [.. choice.Rows.Select(TripClassJson.Of)]);
}
