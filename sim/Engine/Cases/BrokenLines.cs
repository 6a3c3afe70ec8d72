using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// Parses TOML around its broken lines. The first broken line is reported and blanked, and the rest is parsed again, so
/// that one missing quote is one problem and not one on every line behind it.
/// </summary>
internal sealed partial class BrokenLines(string text, ProblemList problems)
{
    /// <summary>Characters parsed in all, which bounds the work on a large file of rubbish.</summary>
    private const int MostCharacters = 4 * 1024 * 1024;

    private const int MostPasses = 100;

    private readonly string[] _lines = text.Split('\n');
    private readonly HashSet<int> _withoutTable = [];

    /// <summary>True for keys below a broken table header: nobody knows what table they belong to.</summary>
    internal bool Hides(int line) => _withoutTable.Contains(line);

    /// <summary>Parses what can be parsed and reports the rest.</summary>
    /// <param name="isStrict">Whether to look for tables defined in two places as well.</param>
    /// <returns>The syntax tree without the broken lines; null when too many are broken to say anything more.</returns>
    internal DocumentSyntax? Parse(bool isStrict)
    {
        int passes = Math.Clamp(MostCharacters / (text.Length + 1), 2, MostPasses);
        for (int pass = 0; pass < passes; pass++)
        {
            DocumentSyntax document = ParseOnce(isStrict);
            DiagnosticMessage? first = document.Diagnostics
                .Where(message => message.Kind == DiagnosticMessageKind.Error)
                .MinBy(message => message.Span.Start.Line);
            if (first is null) return document;
            if (!TakeOut(document, first)) return null;
        }

        return null;
    }

    private DocumentSyntax ParseOnce(bool isStrict)
    {
        try
        {
            // The last line end is for the parser, which throws on a backslash at the very end of the text.
            return SyntaxParser.Parse(string.Join('\n', _lines) + "\n", problems.File, isStrict);
        }
        catch (TomlException fault)
        {
            // Only nesting beyond any sense gets here; everything else is a diagnostic of the document.
            problems.Add(fault.Line ?? 0, "", "lists or tables nested too deeply", "a table in a table");
            problems.ThrowIfAny();
            throw;
        }
    }

    /// <summary>Reports and blanks what is broken; false when nothing is left to blank: no pass is in vain.</summary>
    private bool TakeOut(DocumentSyntax document, DiagnosticMessage message)
    {
        int last = Math.Min(message.Span.Start.Line, _lines.Length - 1);
        int first = StartOfValue(document, last);
        while (first > 0 && string.IsNullOrWhiteSpace(_lines[first])) first--;
        if (string.IsNullOrWhiteSpace(_lines[first])) return false;

        bool hasManyLines = first < last;
        while (hasManyLines && last + 1 < _lines.Length && !BeginsSomething(last + 1)) last++;
        int blamed = Math.Min(message.Span.Start.Line, last);
        if (BeginsSomething(blamed) || string.IsNullOrWhiteSpace(_lines[blamed])) blamed = first;

        string written = BrokenLine.Head(_lines[blamed].Trim());
        (string found, string allowed) = BrokenLine.Explain(written, message.Message ?? "");
        problems.Add(blamed + 1, "", found, allowed);
        if (BrokenLine.IsHeader(written)) HideKeysBelow(blamed);
        for (int line = first; line <= last; line++)
        {
            // The line that shows that a list was not closed is innocent.
            if (line == blamed || !BeginsSomething(line)) _lines[line] = "";
        }

        _lines[first] = "";
        return true;
    }

    /// <summary>First line of the list or text that reaches over a line; the line itself when there is none.</summary>
    private static int StartOfValue(DocumentSyntax document, int line)
    {
        IEnumerable<KeyValueSyntax> pairs =
            document.KeyValues.Concat(document.Tables.SelectMany(table => table.Items));
        SyntaxNode? around = pairs.LastOrDefault(pair => pair.Span.Start.Line < line && pair.Span.End.Line >= line);
        return around?.Span.Start.Line ?? line;
    }

    private void HideKeysBelow(int header)
    {
        for (int line = header + 1; line < _lines.Length && !BrokenLine.IsHeader(_lines[line].Trim()); line++)
        {
            _withoutTable.Add(line + 1);
        }
    }

    private bool BeginsSomething(int line) => KeyOrHeader().IsMatch(BrokenLine.Head(_lines[line]));

    // A key with its value, or a table header.
    [GeneratedRegex(@"^\s*(?:[^=\[\]{},""'#]+=|\[\[?[^=,""'\[]*\]?\]?\s*(?:#.*)?$)")]
    private static partial Regex KeyOrHeader();
}
