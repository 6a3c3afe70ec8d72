using System.Collections.Generic;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what a contactor must bear.</summary>
public sealed record ContactorJson(
    string Contactor,
    string Category,
    double RatedAmps,
    string Decides,
    double RatedVolts,
    double CarriedAmps,
    double PeakVolts,
    double? GivenAmps,
    IReadOnlyList<ContactSwitching> Switchings)
{
    /// <summary>The shape of a demand.</summary>
    public static ContactorJson Of(ContactorDemand demand) => new(
        demand.Name,
        demand.Category.Name,
        demand.RatedAmps,
        demand.Decides,
        demand.RatedVolts,
        demand.CarriedAmps,
        demand.PeakVolts,
        demand.GivenAmps,
        demand.Switchings);
}
