using Spectre.Console;
using StarterCtl.App.Json;

namespace StarterCtl.App.Tables;

/// <summary>A shard's run as people read it.</summary>
internal static class ShardTable
{
    /// <summary>Prints what came of it.</summary>
    public static void Show(IAnsiConsole console, string caseName, ShardJson shard)
    {
        string rows = shard.RowCount == 0 ? "no rows" : $"rows {shard.FirstRow} to {shard.FirstRow + shard.RowCount - 1}";
        console.MarkupLineInterpolated($"[bold]{caseName}[/], shard {shard.Shard}/{shard.Of}: {rows} of {shard.SweepRows}");
        console.MarkupLineInterpolated($"{shard.KeptRows} rows were there, {shard.ComputedRows} computed.");
    }
}
