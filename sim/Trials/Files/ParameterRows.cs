using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>The rows of parameters of a trial's file, each of which makes a trial of its own.</summary>
internal static class ParameterRows
{
    private static readonly CaseKey Name = new("parameters.name", CaseValueKind.Text, "\"heavy load\"", "Name of the row, once in a file");

    /// <summary>Reads the rows; one without name and values where the file has none.</summary>
    public static IReadOnlyList<ParameterRow> Read(TrialTree tree, ProblemList problems)
    {
        CheckUse(tree, problems);
        if (tree.Rows.Count == 0) return [ParameterRow.None];
        CaseValueReader reader = new(problems);
        List<ParameterRow> rows = [];
        foreach (TrialTable table in tree.Rows)
        {
            if (table.Entry(Name) is not CaseEntry entry) problems.Add(table.Line, Name.Path, "nothing", Name.Allowed);
            else if (reader.Read(entry) is CaseValue name)
            {
                if (rows.Any(row => row.Name == name.Written)) problems.Add(name.Line, Name.Path, $"{Words.Quote(name.Written)} a second time", "a name of its own for each row");
                rows.Add(new ParameterRow(name.Written, table.Values));
            }
        }

        return rows;
    }

    // Every "{name}" stands in every row, and every parameter somewhere in the file.
    private static void CheckUse(TrialTree tree, ProblemList problems)
    {
        (int Line, string Name)[] used = [.. Uses(tree)];
        foreach ((int line, string name) in used)
        {
            TrialTable[] without = [.. tree.Rows.Where(row => !row.Values.ContainsKey(name))];
            string allowed = $"a parameter that every [[parameters]] has{(tree.Rows.Count == 0 ? "; the file has none" : $"; the one on line {without.FirstOrDefault()?.Line} has not")}";
            if (tree.Rows.Count == 0 || without.Length > 0) problems.Add(line, "", $"the parameter {Words.Quote(name)}", allowed);
        }

        foreach (TrialTable row in tree.Rows)
        {
            foreach ((string key, (int line, _)) in row.Values)
            {
                if (key != Name.Name && used.All(use => use.Name != key)) problems.Add(line, $"parameters.{key}", "a parameter that nothing uses", $"\"{{{key}}}\" as a value somewhere in the file");
            }
        }
    }

    private static IEnumerable<(int Line, string Name)> Uses(TrialTree tree)
    {
        IEnumerable<(int Line, ValueSyntax Value)> values = tree.Expectations.Append(tree.Head).SelectMany(table => table.Values.Values)
            .Concat(tree.Case.Entries.Select(entry => (entry.Line, entry.Value)));
        foreach ((int line, ValueSyntax value) in values)
        {
            if (ParameterRow.NamedBy(value) is string name) yield return (line, name);
        }
    }
}
