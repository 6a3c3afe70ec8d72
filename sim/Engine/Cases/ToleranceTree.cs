using System.Collections.Generic;
using System.Linq;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Finds the keys under [tolerances], which are the paths of other keys: dotted, in quotes, in tables or in inline tables.</summary>
internal sealed class ToleranceTree(ProblemList problems, BrokenLines broken)
{
    private static readonly Dictionary<string, CaseKey> Varying = PlantKeys.All.ToDictionary(key => key.Path);

    private readonly Dictionary<string, int> _lineOf = [];

    /// <summary>Every tolerance of a quantity that may have one, in the order of the file.</summary>
    internal List<CaseEntry> Entries { get; } = [];

    /// <summary>Whether a path lies in the table of tolerances.</summary>
    internal static bool Holds(string[] segments) => segments[0] == CaseTolerance.Table;

    /// <summary>Reads one key, or all of an inline table.</summary>
    /// <param name="segments">Its path with that of its table.</param>
    /// <param name="line">Its line.</param>
    /// <param name="value">What stands there.</param>
    internal void Read(string[] segments, int line, ValueSyntax value)
    {
        if (problems.IsFull || broken.Hides(line)) return;
        if (value is InlineTableSyntax inline)
        {
            foreach (KeyValueSyntax pair in inline.Items.Select(item => item.KeyValue).OfType<KeyValueSyntax>())
            {
                if (pair is { Key: KeySyntax name, Value: ValueSyntax inner }) Read([.. segments, .. KeyPath.Segments(name)], name.Span.Start.Line + 1, inner);
            }

            return;
        }

        string path = KeyPath.Join(segments.Skip(1).SelectMany(part => part.Split('.')));
        string whole = $"{CaseTolerance.Table}.{Words.Safe(path)}";
        if (path.Length == 0) problems.Add(line, CaseTolerance.Table, CaseValueReader.Describe(value), $"a table, [{CaseTolerance.Table}]");
        else if (!Varying.TryGetValue(path, out CaseKey? key)) ReportUnknown(line, path, whole);
        else if (!_lineOf.TryAdd(path, line)) problems.Add(line, whole, $"it a second time, after line {_lineOf[path]}", "once");
        else Entries.Add(new CaseEntry(key, line, value, -1));
    }

    private void ReportUnknown(int line, string path, string whole)
    {
        string table = path.Contains('.') ? path[..path.LastIndexOf('.')] : "";
        string[] inTable = [.. PlantKeys.All.Where(key => key.Table == table).Select(key => key.Name)];
        string ofTable = inTable.Length > 0 ? $"of [{table}]: {string.Join(", ", inTable)}" : $"quantities of the plant, in {Words.Or(PlantKeys.All.Select(key => $"[{key.Table}]").Distinct())}";
        if (CaseKeys.All.Any(key => key.Path == path))
        {
            problems.Add(line, whole, "a key that does not vary: it is part of the design, a setting or a choice", ofTable);
            return;
        }

        string? nearest = Words.Nearest(path, Varying.Keys);
        problems.Add(line, whole, "an unknown quantity", nearest is null ? ofTable : $"{nearest} is the nearest known one");
    }
}
