using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>One table of a trial's file: its keys with their unread values.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Values">Value and line of each key.</param>
internal sealed record TrialTable(int Line, IReadOnlyDictionary<string, (int Line, ValueSyntax Value)> Values)
{
    /// <summary>The same with values that name a parameter replaced by the row's.</summary>
    public TrialTable With(ParameterRow row) => this with { Values = Values.ToDictionary(pair => pair.Key, pair => row.Take(pair.Value.Line, pair.Value.Value)) };

    /// <summary>A key as an entry that the reader of cases can read; null where it is not written.</summary>
    public CaseEntry? Entry(CaseKey key) => Values.TryGetValue(key.Name, out (int Line, ValueSyntax Value) found) ? new CaseEntry(key, found.Line, found.Value, -1) : null;
}
