using System;
using System.Text.RegularExpressions;

namespace StarterCtl.Engine.Cases;

/// <summary>Says what is wrong with a line that is not TOML, in the words of someone who writes case files.</summary>
internal static partial class BrokenLine
{
    private const string AnyLine = "name = value, [table], [[event]] or # comment";

    private const int LongestHead = 200;

    /// <summary>As much of a line as its kind can be told from; keeps matching quick on lines of any length.</summary>
    internal static string Head(string line) => line.Length > LongestHead ? line[..LongestHead] : line;

    /// <summary>True when the line was meant to be the header of a table.</summary>
    /// <param name="written">The line without spaces around it.</param>
    internal static bool IsHeader(string written) =>
        written.StartsWith('[') || (written.EndsWith(']') && !written.Contains('='));

    /// <summary>Explains a broken line.</summary>
    /// <param name="written">The line without spaces around it.</param>
    /// <param name="message">What the parser says; used where we know no better.</param>
    internal static (string Found, string Allowed) Explain(string written, string message)
    {
        string found = Words.Quote(written);
        if (message.Contains("already defined", StringComparison.Ordinal))
            return ($"{found}, defined in another place before", "each table and each key in one place");
        if (message.Contains("newline in a string", StringComparison.Ordinal))
            return ($"{found}, with a text that does not end", "name = \"value\", with both quotes");
        if (message.Contains("surrogate", StringComparison.Ordinal))
            return ($"{found}, with a character that some program could not convert", "UTF-8 text");
        if (Unclosed().IsMatch(written))
            return ($"{found}, with a bracket that is not closed", "[table], or name = [\"value\", \"value\"]");
        if (WithColon().IsMatch(written)) return ($"{found}, with a colon", "name = value");
        if (WithoutValue().IsMatch(written)) return ($"{found}, without a value", "name = value");

        Match pair = UnquotedPair().Match(written);
        if (!pair.Success) return ($"{found}, which is not TOML ({Words.Safe(message)})", AnyLine);

        string value = pair.Groups[2].Value.Trim('“', '”', '„', '‘', '’', '"', '\'', ' ');
        return BareNumber().IsMatch(value)
            ? ($"{found}, which is not a number of TOML", "digits and a decimal point, e.g. 3 or 0.87")
            : ($"{found}, with a value without quotes", $"{Words.Safe(pair.Groups[1].Value)} = {Words.Quote(value)}");
    }

    [GeneratedRegex(@"^(?:\[[^\]]*|[^=]*=\s*\[[^\]]*)$")]
    private static partial Regex Unclosed();

    [GeneratedRegex("^[A-Za-z0-9_.-]+\\s*:")]
    private static partial Regex WithColon();

    [GeneratedRegex("^[A-Za-z0-9_.-]+\\s*(?:=\\s*)?(?:#.*)?$")]
    private static partial Regex WithoutValue();

    [GeneratedRegex("""^([A-Za-z0-9_.-]+)\s*=\s*([^"'#\[\]{}\s][^"'#\[\]{}]*)\s*(?:#.*)?$""")]
    private static partial Regex UnquotedPair();

    [GeneratedRegex(@"^[-+.,_0-9]*$")]
    private static partial Regex BareNumber();
}
