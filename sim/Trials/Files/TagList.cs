using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>The tags of a trial: words by which trials are picked.</summary>
internal static class TagList
{
    /// <summary>Their key.</summary>
    public const string Key = "tags";

    private const string Allowed = "a list of words of letters, digits and hyphens, e.g. [\"fault\", \"start\"]";

    /// <summary>Reads them; none where the key is left out.</summary>
    public static IReadOnlyList<string> Read(TrialTable head, ProblemList problems)
    {
        if (!head.Values.TryGetValue(Key, out (int Line, ValueSyntax Value) found)) return [];
        if (found.Value is not ArraySyntax list)
        {
            problems.Add(found.Line, Key, CaseValueReader.Describe(found.Value), Allowed);
            return [];
        }

        List<string> tags = [];
        foreach (ValueSyntax item in list.Items.Select(item => item.Value).OfType<ValueSyntax>())
        {
            if (item is StringValueSyntax { Value: string tag } && tag.Length > 0 && tag.All(letter => char.IsLetterOrDigit(letter) || letter == '-')) tags.Add(tag);
            else problems.Add(item.Span.Start.Line + 1, Key, CaseValueReader.Describe(item), Allowed);
        }

        return tags;
    }
}
