using StarterCtl.Sweeps.Sharding;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a shard's run. Extend, never rename.</summary>
/// <param name="Shard">Which part, from 1.</param>
/// <param name="Of">Number of parts.</param>
/// <param name="FirstRow">Its first row.</param>
/// <param name="RowCount">Its rows.</param>
/// <param name="SweepRows">Rows of the whole sweep.</param>
/// <param name="KeptRows">Rows that were there from earlier runs.</param>
/// <param name="ComputedRows">Rows that were computed now.</param>
/// <param name="File">The shard's file.</param>
public sealed record ShardJson(int Shard, int Of, long FirstRow, long RowCount, long SweepRows, long KeptRows, long ComputedRows, string File)
{
    /// <summary>The shape of what came of a shard.</summary>
    public static ShardJson From(ShardResult result) =>
        new(result.Span.Shard, result.Span.Of, result.Span.FirstRow, result.Span.RowCount, result.SweepRows, result.KeptRows, result.ComputedRows, result.Path);
}
