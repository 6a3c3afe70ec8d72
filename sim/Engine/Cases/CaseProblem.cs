using System.Globalization;

namespace StarterCtl.Engine.Cases;

/// <summary>One thing that is wrong with a case file: where it stands, what was found and what is allowed.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">The line, counted from 1; 0 when no line is to blame.</param>
/// <param name="Key">The key with its table, such as motor.inertia; empty when no key is to blame.</param>
/// <param name="Found">What was found, in words; text from the file stands in quotes.</param>
/// <param name="Allowed">What may stand there.</param>
public sealed record CaseProblem(string File, int Line, string Key, string Found, string Allowed)
{
    /// <summary>The whole problem in one line of text.</summary>
    /// <returns>Such as <c>shaft.toml:9: motor.inertia: found "5 A", a current; allowed: a moment ...</c></returns>
    public override string ToString()
    {
        string line = Line > 0 ? string.Create(CultureInfo.InvariantCulture, $":{Line}") : "";
        string key = Key.Length > 0 ? $": {Key}" : "";
        return $"{File}{line}{key}: found {Found}; allowed: {Allowed}";
    }
}
