using System;
using System.Collections.Generic;

namespace StarterCtl.Sweeps.Results;

/// <summary>Rows in blocks of one length, however they come: what a file's bytes depend on.</summary>
internal static class RowBlocks
{
    /// <summary>Groups rows anew, in their order.</summary>
    /// <param name="blocks">Rows in blocks of any length.</param>
    /// <param name="rows">Rows of each block but the last, 1 or more.</param>
    /// <returns>Blocks, each of which is good until the next is asked for.</returns>
    public static IEnumerable<ReadOnlyMemory<T>> Of<T>(IEnumerable<T[]> blocks, int rows)
    {
        T[] block = new T[rows];
        int filled = 0;
        foreach (T[] given in blocks)
        {
            for (int taken = 0; taken < given.Length;)
            {
                int part = Math.Min(rows - filled, given.Length - taken);
                given.AsSpan(taken, part).CopyTo(block.AsSpan(filled));
                (taken, filled) = (taken + part, filled + part);
                if (filled < rows) continue;
                yield return block;
                filled = 0;
            }
        }

        if (filled > 0) yield return block.AsMemory(0, filled);
    }
}
