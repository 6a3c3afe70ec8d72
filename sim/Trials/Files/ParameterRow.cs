using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>One row of parameters: a value in place of every "{name}".</summary>
/// <param name="Name">The row's own name, empty where the file has no rows.</param>
/// <param name="Values">Value and line of each parameter.</param>
internal sealed record ParameterRow(string Name, IReadOnlyDictionary<string, (int Line, ValueSyntax Value)> Values)
{
    /// <summary>The row of a file without parameters.</summary>
    public static ParameterRow None { get; } = new("", new Dictionary<string, (int Line, ValueSyntax Value)>());

    /// <summary>The parameter that a value names; null where it names none.</summary>
    public static string? NamedBy(ValueSyntax value) =>
        value is StringValueSyntax { Value: string text } && text.Length > 2 && text[0] == '{' && text[^1] == '}' ? text[1..^1] : null;

    /// <summary>A value as it is in this row, with the line on which it stands.</summary>
    public (int Line, ValueSyntax Value) Take(int line, ValueSyntax value) =>
        NamedBy(value) is string name && Values.TryGetValue(name, out (int Line, ValueSyntax Value) found) ? found : (line, value);

    /// <summary>An entry of a case likewise.</summary>
    public CaseEntry Take(CaseEntry entry)
    {
        (int line, ValueSyntax value) = Take(entry.Line, entry.Value);
        return entry with { Line = line, Value = value };
    }
}
