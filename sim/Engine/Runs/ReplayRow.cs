using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>A tick as it was recorded and as it was replayed; both have the same readings.</summary>
/// <param name="Row">Row of the record, 1 the first.</param>
/// <param name="Recorded">As recorded.</param>
/// <param name="Replayed">As replayed.</param>
public sealed record ReplayRow(long Row, Sample Recorded, Sample Replayed);
