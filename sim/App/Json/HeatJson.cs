using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of the temperatures of starts. Temperatures in degC are those of the hottest spot.</summary>
public sealed record HeatJson(
    double AmbientCelsius,
    IReadOnlyList<WarmBodyJson> Bodies,
    double StartSeconds,
    int? ConsecutiveStarts,
    string ConsecutiveExcess,
    double RunSeconds,
    int StartsPerHour,
    string StartsExcess,
    DutyJson? Duty)
{
    /// <summary>The shape of a study.</summary>
    public static HeatJson Of(DutyStudy study) => new(
        study.AmbientCelsius,
        [.. study.Bodies.Select((body, i) => WarmBodyJson.Of(study, body, i))],
        study.StartSeconds,
        study.ConsecutiveStarts,
        study.ConsecutiveExcess,
        study.RunSeconds,
        study.StartsPerHour,
        study.StartsExcess,
        study.Duty == null ? null : DutyJson.Of(study.Duty));
}
