using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// A case file in which every key is known, readable and in range. What is missing shows when it is asked for.
/// </summary>
public sealed class CaseFile
{
    private readonly IReadOnlyDictionary<(CaseKey Key, int Event), CaseValue> _values;
    private readonly IReadOnlyDictionary<string, int> _tableLines;

    internal CaseFile(
        string fileName,
        string sha256,
        string text,
        IReadOnlyDictionary<(CaseKey Key, int Event), CaseValue> values,
        IReadOnlyDictionary<string, int> tableLines,
        IReadOnlyList<CaseEvent> events)
    {
        FileName = fileName;
        Sha256 = sha256;
        SourceText = text;
        _values = values;
        _tableLines = tableLines;
        Events = events;
    }

    /// <summary>The file as the user named it.</summary>
    public string FileName { get; }

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public string Sha256 { get; }

    /// <summary>The file as it is, without what a trial or a sweep changes in it.</summary>
    public string SourceText { get; }

    /// <summary>The events in the order of time, which is that of the file.</summary>
    public IReadOnlyList<CaseEvent> Events { get; }

    /// <summary>By how much the real plant may differ from the case, in the order of the file.</summary>
    public IReadOnlyList<CaseTolerance> Tolerances { get; internal init; } = [];

    /// <summary>Reads a case file.</summary>
    /// <param name="path">Its path; messages repeat it as given.</param>
    /// <returns>The case.</returns>
    /// <exception cref="CaseException">The file or anything in it is wrong; carries every problem.</exception>
    public static CaseFile Read(string path) => CaseParser.Parse(path, CaseBytes.Read(path));

    /// <summary>Reads a case from a text.</summary>
    /// <param name="fileName">The name that messages give.</param>
    /// <param name="text">TOML.</param>
    /// <returns>The case.</returns>
    /// <exception cref="CaseException">Anything in the text is wrong; carries every problem.</exception>
    public static CaseFile Parse(string fileName, string text) =>
        CaseParser.Parse(fileName, Encoding.UTF8.GetBytes(text));

    /// <summary>Whether the key is written in the file; a default does not count.</summary>
    /// <param name="key">Any key outside of events.</param>
    /// <returns>True when the file has it.</returns>
    public bool Has(CaseKey key) => _values.ContainsKey((key, -1));

    /// <summary>The value of a quantity, ratio or count.</summary>
    /// <param name="key">A key with a number.</param>
    /// <returns>SI value, the default's when left out; positive infinity for "none".</returns>
    /// <exception cref="CaseException">Left out, and the key has no default.</exception>
    public double Number(CaseKey key) =>
        Value(key, CaseValueKind.Quantity, CaseValueKind.Ratio, CaseValueKind.Count).Number;

    /// <summary>The value of a count.</summary>
    /// <param name="key">A key with a count.</param>
    /// <returns>The count.</returns>
    /// <exception cref="CaseException">Left out.</exception>
    public int Count(CaseKey key) => (int)Value(key, CaseValueKind.Count).Number;

    /// <summary>The value of a text or a choice.</summary>
    /// <param name="key">A key with a text or a choice.</param>
    /// <returns>The text, the default's when left out.</returns>
    /// <exception cref="CaseException">Left out, and the key has no default.</exception>
    public string Text(CaseKey key) => Value(key, CaseValueKind.Text, CaseValueKind.Choice).Written;

    /// <summary>The value of a choice between yes and no.</summary>
    /// <param name="key">A key with that choice.</param>
    /// <returns>True for yes.</returns>
    public bool IsYes(CaseKey key) => Text(key) == "yes";

    /// <summary>Whether any key of a table is written in the file.</summary>
    /// <param name="table">Name of the table.</param>
    /// <returns>True when the file has one.</returns>
    public bool HasAnyOf(string table) => _values.Keys.Any(entry => entry.Event < 0 && entry.Key.Table == table);

    /// <summary>The values of a list.</summary>
    /// <param name="key">A key with a list.</param>
    /// <returns>SI values in the order of the file.</returns>
    /// <exception cref="CaseException">Left out.</exception>
    public IReadOnlyList<double> Numbers(CaseKey key) => Value(key, CaseValueKind.Quantities).Numbers;

    /// <summary>The value as written, without quotes: "0.18 ohm".</summary>
    /// <param name="key">Any key outside of events.</param>
    /// <returns>The text in the file, or that of the default.</returns>
    /// <exception cref="CaseException">Left out, and the key has no default.</exception>
    public string Written(CaseKey key) => Value(key, key.Kind).Written;

    /// <summary>Checks that keys are there. A key with a default is always there.</summary>
    /// <param name="keys">The keys that a later stage cannot do without.</param>
    /// <exception cref="CaseException">Names every missing key.</exception>
    public void Require(params CaseKey[] keys)
    {
        CaseProblem[] missing = [.. MissingOf(keys)];
        if (missing.Length > 0) throw new CaseException(missing);
    }

    /// <summary>The problem of each key that is not there. A key with a default is always there.</summary>
    /// <param name="keys">The keys that a later stage cannot do without.</param>
    /// <returns>One problem a missing key, in their order.</returns>
    public IEnumerable<CaseProblem> MissingOf(params CaseKey[] keys) =>
        keys.Where(key => !Has(key) && key.DefaultText is null).Select(Missing);

    /// <summary>A problem that a later stage sees, at the key's line.</summary>
    /// <param name="key">The key to blame.</param>
    /// <param name="found">What was found, in words.</param>
    /// <param name="allowed">What would do.</param>
    /// <returns>The problem, on the line of the key, or of its table, or without line when both are missing.</returns>
    public CaseProblem Problem(CaseKey key, string found, string allowed)
    {
        return _values.TryGetValue((key, -1), out CaseValue? value)
            ? new CaseProblem(value.File ?? FileName, value.Line, key.Path, found, allowed)
            : new CaseProblem(FileName, _tableLines.GetValueOrDefault(key.Table), key.Path, found, allowed);
    }

    /// <summary>The same case with other values, which nothing has to be read for: one row of a sweep.</summary>
    /// <param name="values">Values in place of the file's own, or beside them.</param>
    internal CaseFile With(IEnumerable<KeyValuePair<CaseKey, CaseValue>> values)
    {
        Dictionary<(CaseKey Key, int Event), CaseValue> all = new(_values);
        foreach ((CaseKey key, CaseValue value) in values) all[(key, -1)] = value;
        return new CaseFile(FileName, Sha256, SourceText, all, _tableLines, Events) { Tolerances = Tolerances };
    }

    /// <summary>The problem of each key that is there without the one that it needs.</summary>
    /// <param name="pairs">Keys, each with the one without which it does nothing.</param>
    internal IEnumerable<CaseProblem> Lonely(params (CaseKey Key, CaseKey Needed)[] pairs) =>
        pairs.Where(pair => Has(pair.Key) && !Has(pair.Needed)).Select(pair => Problem(pair.Key, $"it without {pair.Needed.Path}", $"{pair.Needed.Path} in the file"));

    private CaseProblem Missing(CaseKey key) => Problem(key, "nothing", key.AllowedInFull);

    private CaseValue Value(CaseKey key, params ReadOnlySpan<CaseValueKind> kinds)
    {
        if (!kinds.Contains(key.Kind) || key.Table == CaseKeys.EventAt.Table)
            throw new ArgumentException($"{key.Path} is not read this way", nameof(key));
        if (_values.TryGetValue((key, -1), out CaseValue? value)) return value;
        return key.DefaultText is null ? throw new CaseException([Missing(key)]) : key.DefaultValue;
    }
}
