using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Cases;

/// <summary>Puts text from outside into messages: quoted, short, safe to print, with the nearest known word.</summary>
internal static class Words
{
    private const int LongestQuote = 60;

    /// <summary>A list as English writes it: "a, b or c".</summary>
    internal static string Or(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} or {all[^1]}";
    }

    /// <summary>The text in quotes on one line. Escapes control characters: no file is to drive a terminal.</summary>
    internal static string Quote(string text) => $"\"{Safe(text)}\"";

    /// <summary>The text without control characters and not longer than a line can take.</summary>
    internal static string Safe(string text)
    {
        StringBuilder safe = new();
        foreach (char letter in text.Length > LongestQuote ? text[..LongestQuote] : text)
        {
            bool isPlain = !char.IsControl(letter) && !char.IsSurrogate(letter)
                && char.GetUnicodeCategory(letter) is not (UnicodeCategory.Format or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator);
            if (isPlain) safe.Append(letter);
            else safe.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:X4}");
        }

        return text.Length > LongestQuote ? safe.Append("...").ToString() : safe.ToString();
    }

    /// <summary>The known word that a misspelt one most likely means, or null when none is near.</summary>
    internal static string? Nearest(string misspelt, IEnumerable<string> known)
    {
        string? nearest = null;
        int fewest = Math.Max(2, misspelt.Length / 3) + 1;
        foreach (string word in known)
        {
            if (Math.Abs(word.Length - misspelt.Length) >= fewest) continue;
            int edits = Edits(misspelt, word);
            if (edits >= fewest) continue;
            fewest = edits;
            nearest = word;
        }

        return nearest;
    }

    /// <summary>Insertions, deletions and replacements that turn one word into the other (Levenshtein).</summary>
    internal static int Edits(string from, string to)
    {
        int[] above = [.. Enumerable.Range(0, to.Length + 1)];
        int[] row = new int[to.Length + 1];
        for (int i = 1; i <= from.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int replaced = above[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                row[j] = Math.Min(replaced, Math.Min(above[j], row[j - 1]) + 1);
            }

            (above, row) = (row, above);
        }

        return above[to.Length];
    }
}
