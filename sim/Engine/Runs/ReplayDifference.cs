using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>Where a replay first decided otherwise than the record.</summary>
/// <param name="Row">Row of the record, 1 the first.</param>
/// <param name="Seconds">Its time, s.</param>
/// <param name="Signal">The first signal of the table that differs there.</param>
/// <param name="Recorded">As recorded.</param>
/// <param name="Replayed">As replayed.</param>
public sealed record ReplayDifference(long Row, double Seconds, Signal Signal, double Recorded, double Replayed);
