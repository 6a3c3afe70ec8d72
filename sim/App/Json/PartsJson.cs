using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Parts;

namespace StarterCtl.App.Json;

/// <summary>The published shape of bought parts. Extend, never rename.</summary>
public sealed record PartsJson(
    string Source,
    string Objective,
    int PartsPerSection,
    double StartsPerHour,
    double PeakLimitAmps,
    double SwitchingAmps,
    double WorstPeakAmps,
    int Count,
    decimal? Price,
    bool Proven,
    IReadOnlyList<PartsSectionJson> Sections,
    IReadOnlyList<BillLineJson> Bill)
{
    /// <summary>The shape of chosen parts.</summary>
    public static PartsJson Of(PartsChoice choice) => new(
        choice.Request.SourceText,
        choice.Request.Objective.ToString().ToLowerInvariant(),
        choice.Request.PartsPerSection,
        choice.Request.StartsPerHour,
        choice.Limits.PeakAmps,
        choice.Limits.SwitchingAmps,
        choice.Designed.Design.WorstPeakAmps,
        choice.Count,
        choice.Price,
        choice.IsProven,
        [.. choice.Sections.Select(PartsSectionJson.Of)],
        [.. choice.Bill().Select(BillLineJson.Of)]);
}
