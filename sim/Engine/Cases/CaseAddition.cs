using System;
using System.Collections.Generic;
using System.Linq;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Puts keys into a case and leaves everything else in it as it stands, comments included.</summary>
public static class CaseAddition
{
    /// <summary>The text of a case with other values of keys, or more keys, in one of its tables.</summary>
    /// <param name="file">The case.</param>
    /// <param name="comments">Lines before the added keys, each with its own <c>#</c>.</param>
    /// <param name="pairs">The keys, all of one table, each with its value as TOML.</param>
    /// <exception cref="CaseException">The table is written in a way that nothing can be added to.</exception>
    public static string To(CaseFile file, IReadOnlyList<string> comments, IReadOnlyList<(CaseKey Key, string Value)> pairs)
    {
        (CaseKey Key, string Value)[] added = [.. pairs.Where(pair => !file.Has(pair.Key))];
        string text = added.Length == 0 ? file.SourceText : Added(file, added[0].Key, comments, added);
        foreach ((CaseKey key, string value) in pairs.Where(pair => file.Has(pair.Key))) text = Replaced(file, text, key, value);
        return text;
    }

    private static string Added(CaseFile file, CaseKey first, IReadOnlyList<string> comments, (CaseKey Key, string Value)[] pairs)
    {
        (int line, string prefix, string[] head) = PlaceIn(file, first);
        string end = file.SourceText.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string[] added = [.. head, .. comments, .. pairs.Select(pair => $"{prefix}{pair.Key.Path[(pair.Key.Table.Length + 1)..]} = {pair.Value}")];
        string[] lines = file.SourceText.Split('\n');
        string before = string.Join('\n', lines[..line]), after = string.Join('\n', lines[line..]);
        bool hasEnd = line < lines.Length;
        return $"{before}{(hasEnd ? "\n" : end)}{string.Join(end, added)}{(hasEnd ? end : "")}{after}";
    }

    private static string Replaced(CaseFile file, string text, CaseKey key, string value)
    {
        DocumentSyntax document = SyntaxParser.Parse(text, file.FileName);
        IEnumerable<(string Path, ValueSyntax? Value)> pairs = document.KeyValues.Select(pair => (KeyPath.Join(KeyPath.Segments(pair.Key!)), pair.Value))
            .Concat(document.Tables.OfType<TableSyntax>().SelectMany(table => table.Items.OfType<KeyValueSyntax>().Select(pair => (KeyPath.Join([.. KeyPath.Segments(table.Name!), .. KeyPath.Segments(pair.Key!)]), pair.Value))));
        if (pairs.FirstOrDefault(pair => pair.Path == key.Path).Value is not ValueSyntax found) throw NoPlace(file, key);
        return text[..found.Span.Start.Offset] + value + text[(found.Span.End.Offset + 1)..];
    }

    // Behind the head of the table, or behind the first key that names it; a table that is not there comes last.
    private static (int Line, string Prefix, string[] Head) PlaceIn(CaseFile file, CaseKey key)
    {
        DocumentSyntax document = SyntaxParser.Parse(file.SourceText, file.FileName);
        TableSyntax? table = document.Tables.OfType<TableSyntax>().FirstOrDefault(found => KeyPath.Join(KeyPath.Segments(found.Name!)) == key.Table);
        if (table != null) return (table.Name!.Span.Start.Line + 1, "", []);
        KeyValueSyntax? pair = document.KeyValues.FirstOrDefault(found => KeyPath.Segments(found.Key!) is [string first, _] && first == key.Table);
        if (pair != null) return (pair.Value!.Span.End.Line + 1, key.Table + ".", []);
        if (!file.HasAnyOf(key.Table)) return (file.SourceText.TrimEnd('\r', '\n').Count(letter => letter == '\n') + 1, "", ["", $"[{key.Table}]"]);
        throw NoPlace(file, key);
    }

    private static CaseException NoPlace(CaseFile file, CaseKey key) =>
        new([file.Problem(key, $"the {key.Table} table on one line", $"a [{key.Table}] table, to which keys can be added")]);
}
