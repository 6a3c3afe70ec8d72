using System.Collections.Generic;

namespace StarterCtl.App.Reporting;

/// <summary>A table of the report.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Columns">Headings, each text or <see cref="Markup"/>.</param>
/// <param name="Style">"figures" aligns numbers to the right; "words" aligns everything to the left.</param>
internal sealed record ReportTable(string Caption, IReadOnlyList<object> Columns, string Style = "figures")
{
    /// <summary>The rows.</summary>
    public List<object[]> Rows { get; } = [];

    /// <summary>Adds a row; its first cell heads it.</summary>
    public void Add(params object[] cells) => Rows.Add(cells);
}
