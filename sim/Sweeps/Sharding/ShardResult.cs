using StarterCtl.Sweeps.Results;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>What it took to make a shard whole.</summary>
/// <param name="Span">Its rows.</param>
/// <param name="SweepRows">Rows of the whole sweep.</param>
/// <param name="KeptRows">Rows that were there from earlier runs.</param>
/// <param name="ComputedRows">Rows that were computed now.</param>
/// <param name="WasWhole">True when nothing was done: the shard's file stood there.</param>
/// <param name="Path">The shard's file.</param>
public sealed record ShardResult(ShardSpan Span, long SweepRows, long KeptRows, long ComputedRows, bool WasWhole, string Path);
