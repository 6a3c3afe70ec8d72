using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a trip class held against a start.</summary>
public sealed record TripClassJson(
    string Class, double TimeConstantSeconds, double LevelAfterColdStart, double LevelAfterHotStart, double? DutyLevel, double? DutyStartLevel, double? UnprotectedMultiple, string Objection)
{
    /// <summary>The shape of a row.</summary>
    public static TripClassJson Of(OverloadRow row) => new(
        row.Class.Name,
        row.Class.Seconds,
        row.LevelAfterColdStart,
        row.LevelAfterHotStart,
        row.DutyLevel,
        row.DutyStartLevel,
        row.UnprotectedMultiple,
        row.Objection);
}
