using System;
using System.Collections.Generic;
using System.Linq;
using System.Security.Cryptography;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Makes a case of the bytes of a file: text, syntax, known keys, values, checks between keys.</summary>
internal static class CaseParser
{
    internal static CaseFile Parse(string file, byte[] bytes, CaseChanges? changes = null)
    {
        string text = CaseBytes.Decode(file, bytes);
        ProblemList problems = new(file);
        BrokenLines lines = new(text, problems);
        CaseTree tree = new(problems, lines);
        if (lines.Parse(isStrict: false) is DocumentSyntax document) tree.Read(document);
        if (problems.IsEmpty && tree.Entries.Count == 0 && tree.Tolerances.Entries.Count == 0 && tree.TableLines.Count == 0 && tree.EventLines.Count == 0)
            throw CaseBytes.Unusable(file, "nothing but blank lines and comments", CaseBytes.Beginning);

        Dictionary<(CaseKey Key, int Event), CaseValue> values = ReadValues(tree.Entries, problems);
        HashSet<(CaseKey Key, int Event)> written = [.. FindWritten(tree.Entries)];
        changes ??= new CaseChanges(file, [], [], true);
        ProblemList changeProblems = new(changes.FileName);
        Dictionary<(CaseKey Key, int Event), CaseValue> changed = ReadValues(changes.Entries, changeProblems);
        HashSet<(CaseKey Key, int Event)> added = [.. FindWritten(changes.Entries)];
        foreach ((CaseKey Key, int Event) place in added.Where(place => place.Event < 0))
        {
            written.Add(place);
            if (changed.TryGetValue(place, out CaseValue? value)) values[place] = value;
        }

        ResolvePercentages(values, written, problems);
        CaseValue? duration = ValueOrDefault(CaseKeys.RunDuration, values, written);
        List<CaseEvent> own = changes.KeepsEvents ? new CaseEvents(problems).Build(tree.EventLines, written, values, duration) : [];
        ToleranceReader tolerances = new(problems);
        CaseTolerance[] tolerated = [.. tree.Tolerances.Entries.Select(tolerances.Read).OfType<CaseTolerance>()];
        List<CaseEvent> events = CaseChanges.Merge(own, new CaseEvents(changeProblems).Build(changes.EventLines, added, changed, duration));

        // Rare finer points of TOML, such as a table that dotted keys have opened before.
        if (problems.IsEmpty) lines.Parse(isStrict: true);
        foreach (CaseProblem problem in changeProblems.All) problems.Add(problem);
        problems.ThrowIfAny();
        return new CaseFile(file, Convert.ToHexStringLower(SHA256.HashData(bytes)), text, values, tree.TableLines, events) { Tolerances = tolerated };
    }

    private static Dictionary<(CaseKey Key, int Event), CaseValue> ReadValues(IEnumerable<CaseEntry> entries, ProblemList problems)
    {
        CaseValueReader reader = new(problems);
        Dictionary<(CaseKey Key, int Event), CaseValue> values = [];
        foreach (CaseEntry entry in entries)
        {
            if (reader.Read(entry) is CaseValue value) values.Add((entry.Key, entry.Event), value with { File = problems.File });
        }

        return values;
    }

    private static IEnumerable<(CaseKey Key, int Event)> FindWritten(IEnumerable<CaseEntry> entries)
    {
        foreach (CaseEntry entry in entries) yield return (entry.Key, entry.Event);
    }

    private static void ResolvePercentages(
        Dictionary<(CaseKey Key, int Event), CaseValue> values,
        HashSet<(CaseKey Key, int Event)> written,
        ProblemList problems)
    {
        foreach (CaseKey key in CaseKeys.All)
        {
            if (!values.TryGetValue((key, -1), out CaseValue? value) || !value.IsPercent) continue;

            CaseKey whole = key.PercentOf!;
            if (!values.TryGetValue((whole, -1), out CaseValue? wholeValue))
            {
                // A whole that is there but unreadable has been reported already.
                if (written.Contains((whole, -1))) continue;
                string without = $"{Words.Quote(value.Written)} without {whole.Path}";
                problems.Add(new CaseProblem(value.File!, value.Line, key.Path, without, $"{whole.Path} in the file, or {key.AllowedInFull}"));
                continue;
            }

            double number = value.Number * wholeValue.Number / 100;
            if (!key.Range!.Contains(number))
                problems.Add(new CaseProblem(value.File!, value.Line, key.Path, Words.Quote(value.Written), key.Allowed));
            values[(key, -1)] = value with { Number = number, IsPercent = false };
        }
    }

    private static CaseValue? ValueOrDefault(
        CaseKey key,
        Dictionary<(CaseKey Key, int Event), CaseValue> values,
        HashSet<(CaseKey Key, int Event)> written) =>
        values.TryGetValue((key, -1), out CaseValue? value) ? value
            : written.Contains((key, -1)) ? null
            : key.DefaultValue;
}
