using System;
using System.Collections.Generic;
using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// Lines that are not TOML. Each is reported once, and what the parser made of it is not judged any further: after a
/// broken table header the keys up to the next header belong to nobody knows what.
/// </summary>
internal sealed partial class BrokenLines
{
    private readonly string[] _lines;
    private readonly HashSet<int> _hidden = [];

    /// <summary>Takes over what the parser complained about.</summary>
    /// <param name="text">The file.</param>
    /// <param name="document">What the parser made of it.</param>
    internal BrokenLines(string text, DocumentSyntax document)
    {
        _lines = text.Split('\n');
        foreach (DiagnosticMessage message in document.Diagnostics)
        {
            int line = Math.Min(message.Span.Start.Line + 1, _lines.Length);
            if (_hidden.Add(line)) Messages.Add((line, message.Message ?? ""));
        }

        HideKeysOfBrokenHeaders();
    }

    /// <summary>The parser's first word on each broken line.</summary>
    internal List<(int Line, string Message)> Messages { get; } = [];

    /// <summary>True when nothing more is to be said about a line.</summary>
    internal bool Hides(int line) => _hidden.Contains(line);

    /// <summary>Reports every broken line.</summary>
    internal void ReportTo(ProblemList problems)
    {
        foreach ((int line, string message) in Messages)
        {
            string written = _lines[line - 1].Trim();
            (string found, string allowed) = Explain(written, message);
            problems.Add(line, "", found, allowed);
        }
    }

    private void HideKeysOfBrokenHeaders()
    {
        bool isInDoubt = false;
        HashSet<int> brokenLines = [.. _hidden];
        for (int line = 1; line <= _lines.Length && brokenLines.Count > 0; line++)
        {
            string written = _lines[line - 1].Trim();
            bool looksLikeHeader = written.StartsWith('[') || (written.EndsWith(']') && !written.Contains('='));
            if (looksLikeHeader) isInDoubt = brokenLines.Contains(line);
            if (isInDoubt) _hidden.Add(line);
        }
    }

    private static (string Found, string Allowed) Explain(string written, string message)
    {
        string found = Words.Quote(written);
        Match pair = UnquotedPair().Match(written);
        if (!pair.Success) return ($"{found}, which is not TOML ({Words.Safe(message)})", "name = value, [table], [[event]] or # comment");

        string name = pair.Groups[1].Value;
        string value = pair.Groups[2].Value.Trim('“', '”', '„', '‘', '’', '"', '\'', ' ');
        return BareNumber().IsMatch(value)
            ? ($"{found}, which is not a number of TOML", "digits and a decimal point, e.g. 3 or 0.87")
            : ($"{found}, with a value without quotes", $"{Words.Safe(name)} = {Words.Quote(value)}");
    }

    [GeneratedRegex("""^([A-Za-z0-9_.-]+)\s*=\s*([^"'#\[\]{}\s][^"'#\[\]{}]*)\s*(?:#.*)?$""")]
    private static partial Regex UnquotedPair();

    [GeneratedRegex(@"^[-+.,_0-9]*$")]
    private static partial Regex BareNumber();
}
