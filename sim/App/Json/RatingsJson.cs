using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what the parts around a start must bear. Extend, never rename. SI units except where the name says otherwise.</summary>
public sealed record RatingsJson(
    SupplyLoadingJson? Supply, HeatJson? Heat, OverloadJson? Overload, IReadOnlyList<ContactorJson> Contactors, IReadOnlyList<string> Excesses)
{
    /// <summary>The shape of a case's ratings.</summary>
    public static RatingsJson Of(CaseRatings ratings) => new(
        ratings.Supply == null ? null : SupplyLoadingJson.Of(ratings.Supply),
        ratings.Heat == null ? null : HeatJson.Of(ratings.Heat),
        ratings.Overload == null ? null : OverloadJson.Of(ratings.Overload),
        [.. ratings.Contactors.Select(ContactorJson.Of)],
        ratings.Excesses);
}
