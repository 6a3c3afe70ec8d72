using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// Flattens a syntax tree into known keys, so that tables, dotted keys and inline tables are one and the same later on.
/// Reports what is unknown, given twice or in the wrong kind of table.
/// </summary>
internal sealed class CaseTree(ProblemList problems, BrokenLines broken)
{
    private const string EventTable = "event";
    private const string EventsOnly = "[[event]] with two brackets, once for each event";

    private static readonly Dictionary<string, CaseKey> KnownKeys = CaseKeys.All.ToDictionary(key => key.Path);

    private static readonly HashSet<string> KnownTables = FindTables();

    private readonly Dictionary<(string Path, int Event), int> _lineOf = [];

    /// <summary>Every known key in the file, in its order.</summary>
    internal List<CaseEntry> Entries { get; } = [];

    /// <summary>The line of every table in the file.</summary>
    internal Dictionary<string, int> TableLines { get; } = [];

    /// <summary>The line of every event in the file.</summary>
    internal List<int> EventLines { get; } = [];

    /// <summary>The tolerances.</summary>
    internal ToleranceTree Tolerances { get; } = new(problems, broken);

    /// <summary>Walks the whole document.</summary>
    internal void Read(DocumentSyntax document)
    {
        foreach (KeyValueSyntax pair in document.KeyValues) ReadPair([], pair, -1);
        foreach (TableSyntaxBase table in document.Tables) ReadTable(table);
    }

    private void ReadTable(TableSyntaxBase table)
    {
        if (problems.IsFull || table.Name is null) return;
        int line = LineOf(table);
        string[] segments = KeyPath.Segments(table.Name);
        string path = KeyPath.Join(segments);
        bool isArray = table is TableArraySyntax;
        if (path == EventTable && isArray)
        {
            ReadEvent(line, table.Items);
            return;
        }

        if (path == EventTable) Report(line, "", $"[{path}]", EventsOnly);
        else if (!KnownTables.Contains(path) && !ToleranceTree.Holds(segments)) ReportUnknownTable(line, path);
        else
        {
            if (isArray) Report(line, "", $"[[{path}]]", $"[{path}] with one bracket");
            AddTable(path, line);
            foreach (KeyValueSyntax pair in table.Items) ReadPair(segments, pair, -1);
        }
    }

    /// <summary>Reads one event.</summary>
    internal void ReadEvent(int line, IEnumerable<KeyValueSyntax> pairs)
    {
        EventLines.Add(line);
        foreach (KeyValueSyntax pair in pairs) ReadPair([EventTable], pair, EventLines.Count - 1);
    }

    /// <summary>Reads a key that stands by its whole path, in quotes or not, outside of its table.</summary>
    internal void ReadByPath(KeyValueSyntax pair)
    {
        if (problems.IsFull || pair.Key is null || pair.Value is null) return;
        int line = LineOf(pair.Key);
        string[] segments = [.. KeyPath.Segments(pair.Key).SelectMany(part => part.Split('.'))];
        ReadKey(line, segments, KeyPath.Join(segments), pair.Value, -1);
    }

    private void ReadPair(string[] table, KeyValueSyntax pair, int eventIndex)
    {
        if (problems.IsFull || pair.Key is null || pair.Value is null) return;
        int line = LineOf(pair.Key);
        if (broken.Hides(line)) return;

        string[] segments = [.. table, .. KeyPath.Segments(pair.Key)];
        if (ToleranceTree.Holds(segments))
        {
            Tolerances.Read(segments, line, pair.Value);
            return;
        }

        string path = KeyPath.Join(segments);
        bool isInEvent = segments[0] == EventTable;
        if (path == EventTable) ReadEventList(line, pair.Value);
        else if (KnownTables.Contains(path)) ReadInlineTable(segments, path, line, pair.Value);
        else if (isInEvent && eventIndex < 0) Report(line, path, "a key of an event outside of any", EventsOnly);
        else ReadKey(line, segments, path, pair.Value, eventIndex);
    }

    private void ReadKey(int line, string[] segments, string path, ValueSyntax value, int eventIndex)
    {
        if (!KnownKeys.TryGetValue(path, out CaseKey? key)) ReportUnknownKey(line, segments, path);
        else if (!_lineOf.TryAdd((path, eventIndex), line)) ReportTwice(line, path, _lineOf[(path, eventIndex)]);
        else Entries.Add(new CaseEntry(key, line, value, eventIndex));
    }

    private void ReadInlineTable(string[] segments, string path, int line, ValueSyntax value)
    {
        if (value is not InlineTableSyntax inline)
        {
            Report(line, path, CaseValueReader.Describe(value), $"a table, [{path}]");
            return;
        }

        AddTable(path, line);
        foreach (InlineTableItemSyntax item in inline.Items)
        {
            if (item.KeyValue is not null) ReadPair(segments, item.KeyValue, -1);
        }
    }

    private void ReadEventList(int line, ValueSyntax value)
    {
        if (value is not ArraySyntax list || list.Items.Any(item => item.Value is not InlineTableSyntax))
        {
            Report(line, EventTable, CaseValueReader.Describe(value), EventsOnly);
            return;
        }

        foreach (InlineTableSyntax inline in list.Items.Select(item => item.Value).OfType<InlineTableSyntax>())
        {
            ReadEvent(LineOf(inline), inline.Items.Select(item => item.KeyValue).OfType<KeyValueSyntax>());
        }
    }

    private void AddTable(string path, int line)
    {
        if (!TableLines.TryAdd(path, line)) ReportTwice(line, $"[{path}]", TableLines[path]);
    }

    private void ReportTwice(int line, string what, int firstLine) =>
        Report(line, what, $"it a second time, after line {firstLine.ToString(CultureInfo.InvariantCulture)}", "once");

    private void ReportUnknownTable(int line, string path)
    {
        string? nearest = Words.Nearest(path, KnownTables.Append(CaseTolerance.Table).Append(EventTable));
        string allowed = nearest switch
        {
            null => Words.Or(KnownTables.Append(CaseTolerance.Table).Select(table => $"[{table}]").Append($"[[{EventTable}]]")),
            EventTable => $"[[{EventTable}]]",
            _ => $"[{nearest}]",
        };
        Report(line, "", $"the unknown table [{Words.Safe(path)}]", allowed);
    }

    private void ReportUnknownKey(int line, string[] segments, string path)
    {
        string table = KeyPath.Join(segments[..^1]);
        string? nearest = Words.Nearest(path, KnownKeys.Keys)
            ?? KnownKeys.Keys.FirstOrDefault(known => KnownKeys[known].Name == segments[^1]);
        string[] inTable = [.. CaseKeys.All.Where(key => key.Table == table).Select(key => key.Name)];
        string allowed = nearest is not null ? $"{nearest} is the nearest known key"
            : table.Length > 0 && inTable.Length > 0 ? $"in [{table}]: {string.Join(", ", inTable)}"
            : $"title, or a table: {Words.Or(KnownTables.Select(known => $"[{known}]"))}";
        Report(line, Words.Safe(path), "an unknown key", allowed);
    }

    private void Report(int line, string key, string found, string allowed)
    {
        if (!broken.Hides(line)) problems.Add(line, key, found, allowed);
    }

    private static HashSet<string> FindTables()
    {
        HashSet<string> tables = [.. CaseKeys.All.Select(key => key.Table)];
        tables.Remove("");
        tables.Remove(EventTable);
        return tables;
    }

    private static int LineOf(SyntaxNode node) => node.Span.Start.Line + 1;
}
