using System;
using System.Globalization;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>
/// One of n parts of a sweep's rows, in one piece each and as long as each other but for one row. Which rows a part has depends on n, what
/// stands in a row does not.
/// </summary>
/// <param name="Number">Which part, 1 to <paramref name="Of"/>.</param>
/// <param name="Of">Number of parts, 1 to <see cref="MostShards"/>; there may be more of them than rows, and some are empty then.</param>
public sealed record Shard(int Number, int Of)
{
    /// <summary>Most parts of one sweep.</summary>
    public const int MostShards = 1_000_000;

    /// <summary>Its rows.</summary>
    /// <param name="count">Rows of the whole sweep, up to 1 000 000 000.</param>
    /// <returns>The first row and how many.</returns>
    public (long First, long Count) RowsOf(long count)
    {
        long first = (Number - 1) * count / Of;
        return (first, Number * count / Of - first);
    }

    /// <summary>As it is written on the command line: "2/4".</summary>
    public override string ToString() => FormattableString.Invariant($"{Number}/{Of}");

    /// <summary>As it stands in names of files, which then list in the order of the rows: "02-of-16".</summary>
    internal string ToFileName()
    {
        string of = Of.ToString(CultureInfo.InvariantCulture);
        return $"{Number.ToString(CultureInfo.InvariantCulture).PadLeft(of.Length, '0')}-of-{of}";
    }
}
