using System.Collections.Generic;

namespace StarterCtl.Engine.Cases;

/// <summary>The value of a key: SI numbers or text, beside what was written.</summary>
/// <param name="Written">As in the file, without quotes.</param>
/// <param name="Line">Its line; 0 for a default.</param>
internal sealed record CaseValue(string Written, int Line)
{
    /// <summary>The file in which it stands; null for a default.</summary>
    internal string? File { get; init; }

    /// <summary>SI number, count or ratio.</summary>
    internal double Number { get; init; } = double.NaN;

    /// <summary>SI numbers of a list.</summary>
    internal IReadOnlyList<double> Numbers { get; init; } = [];

    /// <summary>True while <see cref="Number"/> is a percentage of another key.</summary>
    internal bool IsPercent { get; init; }
}
