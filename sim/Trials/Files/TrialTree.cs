using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>Sorts a trial's file into its head, what it sets, its events, its expectations and its rows of parameters.</summary>
internal sealed class TrialTree(ProblemList problems, BrokenLines broken)
{
    private const string Set = "set";
    private const string Event = "event";
    private const string Expect = "expect";
    private const string Parameters = "parameters";
    private const string Tables = "[set], [[event]], [[expect]] or [[parameters]]";

    private static readonly string[] HeadKeys = [TrialKeys.Title.Name, TrialKeys.Case.Name, TagList.Key, TrialKeys.KeepEvents.Name];

    private static readonly string[] ExpectKeys =
    [
        TrialKeys.ExpectName.Name, TrialKeys.ExpectSignal.Name, TrialKeys.ExpectFault.Name, .. TrialKeys.Kinds, TrialKeys.Tolerance, TrialKeys.ExpectFor.Name,
        TrialKeys.ExpectFrom.Name, TrialKeys.ExpectTo.Name, TrialKeys.ExpectAfterEvent.Name, TrialKeys.ExpectWithin.Name,
    ];

    // What a trial judges by stands in its own file, and so does what happens.
    private static readonly string[] NotSet = ["event", "expect", "limits"];

    /// <summary>Keys above all tables.</summary>
    public TrialTable Head { get; private set; } = new(1, new Dictionary<string, (int Line, ValueSyntax Value)>());

    /// <summary>Expectations.</summary>
    public List<TrialTable> Expectations { get; } = [];

    /// <summary>Rows of parameters.</summary>
    public List<TrialTable> Rows { get; } = [];

    /// <summary>What is set in the case, and what happens: read by the case's own vocabulary.</summary>
    public CaseTree Case { get; } = new(problems, broken);

    /// <summary>Walks the whole document.</summary>
    public void Read(DocumentSyntax document)
    {
        Head = ReadTable(1, "", HeadKeys, document.KeyValues);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name == null || problems.IsFull) continue;
            ReadTable(table, KeyPath.Join(KeyPath.Segments(table.Name)));
        }
    }

    private void ReadTable(TableSyntaxBase table, string name)
    {
        int line = table.Span.Start.Line + 1;
        bool isList = table is TableArraySyntax;
        if (isList != (name != Set) && name is Set or Event or Expect or Parameters)
        {
            problems.Add(line, "", isList ? $"[[{name}]]" : $"[{name}]", isList ? $"[{name}] with one bracket" : $"[[{name}]] with two brackets, once for each");
        }
        else if (name == Set) ReadSet(table);
        else if (name == Event) Case.ReadEvent(line, table.Items);
        else if (name == Expect) Expectations.Add(ReadTable(line, Expect + ".", ExpectKeys, table.Items));
        else if (name == Parameters) Rows.Add(ReadTable(line, Parameters + ".", null, table.Items));
        else problems.Add(line, "", $"the unknown table [{Words.Safe(name)}]", Tables);
    }

    private void ReadSet(TableSyntaxBase table)
    {
        foreach (KeyValueSyntax pair in table.Items)
        {
            if (pair.Key == null) continue;
            string first = KeyPath.Segments(pair.Key)[0].Split('.')[0];
            if (NotSet.Contains(first))
            {
                problems.Add(pair.Key.Span.Start.Line + 1, Words.Safe(first), "a key that a trial does not set", "[[event]] for what happens, [[expect]] for what is expected");
            }
            else Case.ReadByPath(pair);
        }
    }

    private TrialTable ReadTable(int line, string path, string[]? known, IEnumerable<KeyValueSyntax> pairs)
    {
        Dictionary<string, (int Line, ValueSyntax Value)> values = [];
        foreach (KeyValueSyntax pair in pairs)
        {
            if (pair.Key == null || pair.Value == null || problems.IsFull) continue;
            int at = pair.Key.Span.Start.Line + 1;
            if (broken.Hides(at)) continue;
            string key = KeyPath.Join(KeyPath.Segments(pair.Key));
            if (known != null && !known.Contains(key))
            {
                string nearest = Words.Nearest(key, known) is string near ? $"{near} is the nearest known key" : Words.Or(known);
                problems.Add(at, path + Words.Safe(key), "an unknown key", nearest);
            }
            else if (!values.TryAdd(key, (at, pair.Value)))
            {
                problems.Add(at, path + Words.Safe(key), $"it a second time, after line {values[key].Line.ToString(CultureInfo.InvariantCulture)}", "once");
            }
        }

        return new TrialTable(line, values);
    }
}
