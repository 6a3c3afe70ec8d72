namespace StarterCtl.App.Json;

/// <summary>Where a replay first decided otherwise; values in the words of the record.</summary>
public sealed record ReplayDifferenceJson(long Row, double Seconds, string Signal, string Recorded, string Replayed);
