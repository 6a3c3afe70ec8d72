namespace StarterCtl.Engine.Ratings;

/// <summary>One trip class held against a start. Levels are those of the controller's own thermal image, 1 trips.</summary>
/// <param name="Class">The class.</param>
/// <param name="LevelAfterColdStart">Highest level of a start with a cold image.</param>
/// <param name="LevelAfterHotStart">Highest level of a start after long running at the setting.</param>
/// <param name="DutyLevel">Highest level in the case's duty once it repeats itself; null: no duty.</param>
/// <param name="DutyStartLevel">Level when start is pressed in that duty: above the reset level the controller refuses it.</param>
/// <param name="UnprotectedMultiple">Current over the setting at which it would trip later than the winding bears, from cold or from hot; null: nowhere up to the instantaneous trip, or nobody knows what it bears.</param>
/// <param name="Objection">What speaks against it; empty: nothing.</param>
public sealed record OverloadRow(
    TripClass Class, double LevelAfterColdStart, double LevelAfterHotStart, double? DutyLevel, double? DutyStartLevel, double? UnprotectedMultiple, string Objection);
