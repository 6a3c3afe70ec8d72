using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Parts;

/// <summary>Writes a case that carries the chosen parts: the case as it is, with its sections and what they need beside its other keys.</summary>
internal static class PartsCase
{
    private const string Table = "starter";

    /// <summary>The case with sections.</summary>
    /// <param name="file">The case without.</param>
    /// <param name="found">The parts.</param>
    /// <param name="limits">What they were chosen for.</param>
    /// <param name="source">Where the parts come from, in words.</param>
    /// <exception cref="CaseException">The case's starter stands in no table of its own.</exception>
    public static string Write(CaseFile file, PartsFound found, PartsLimits limits, string source)
    {
        (int line, string prefix) = PlaceIn(file);
        List<string> added = [$"# Bought parts of {source}, chosen by starterctl design:"];
        for (int i = 0; i < found.Sections.Count; i++) added.Add($"#   section {Number(i + 1)}: {found.Sections[i]} = {Number(found.Sections[i].Ohms)} ohm");
        added.Add($"{prefix}sections = [{string.Join(", ", found.Sections.Select(network => Quoted(network.Ohms, "ohm")))}]");
        if (!limits.IsSwitchingGiven) added.Add($"{prefix}switching-current = {Quoted(limits.SwitchingAmps, "A")}");
        if (!limits.IsPeakGiven) added.Add($"{prefix}peak-current = {Quoted(PartsLimits.WrittenAbove(found.Design.WorstPeakAmps), "A")}");
        string end = file.SourceText.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string[] lines = file.SourceText.Split('\n');
        string before = string.Join('\n', lines[..line]), after = string.Join('\n', lines[line..]);
        bool hasEnd = line < lines.Length;
        return $"{before}{(hasEnd ? "\n" : end)}{string.Join(end, added)}{(hasEnd ? end : "")}{after}";
    }

    // Behind the head of the table, or behind the first key that names it.
    private static (int Line, string Prefix) PlaceIn(CaseFile file)
    {
        DocumentSyntax document = SyntaxParser.Parse(file.SourceText, file.FileName);
        TableSyntax? table = document.Tables.OfType<TableSyntax>().FirstOrDefault(found => KeyPath.Join(KeyPath.Segments(found.Name!)) == Table);
        if (table != null) return (table.Name!.Span.Start.Line + 1, "");
        KeyValueSyntax? pair = document.KeyValues.FirstOrDefault(found => KeyPath.Segments(found.Key!) is [Table, _]);
        if (pair != null) return (pair.Value!.Span.End.Line + 1, Table + ".");
        throw new CaseException([file.Problem(CaseKeys.StarterSections, "the starter in a table on one line", "a [starter] table, to which the sections can be added")]);
    }

    private static string Quoted(double number, string unit) => $"\"{Number(number)} {unit}\"";

    private static string Number(double number) => number.ToString("0.#################", CultureInfo.InvariantCulture);
}
