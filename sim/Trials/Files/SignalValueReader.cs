using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Judging;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>Reads values that a signal is held against: a quantity where it has a unit, a word where it shows words, else a plain number.</summary>
internal sealed class SignalValueReader(ProblemList problems)
{
    /// <summary>Reads one value.</summary>
    /// <param name="key">The key with its table, for the message.</param>
    /// <param name="line">Its line.</param>
    /// <param name="signal">The signal.</param>
    /// <param name="value">What stands there.</param>
    /// <param name="word">The word where the signal shows words, else null.</param>
    /// <returns>The number, or the word's id; null after a problem.</returns>
    public double? Read(string key, int line, Signal signal, ValueSyntax value, out string? word)
    {
        word = null;
        string[] words = SignalText.WordsOf(signal);
        if (words.Length > 0) return ReadWord(key, line, signal, value, words, out word);
        if (SignalText.DimensionOf(signal) is not Dimension dimension) return ReadPlain(key, line, signal, value);
        string found = CaseValueReader.Describe(value);
        if (value is StringValueSyntax { Value: string text } && Units.TryParse(text, dimension, out double number, out found)) return SignalText.FromSi(signal, number);
        problems.Add(line, key, found, $"{Units.Allowed(dimension)}, for {signal.Name}");
        return null;
    }

    /// <summary>Reads a list of values; null after a problem.</summary>
    public IReadOnlyList<double>? ReadList(string key, int line, Signal signal, ValueSyntax value, int fewest, int most, out IReadOnlyList<string> words)
    {
        words = [];
        ValueSyntax[] items = value is ArraySyntax list ? [.. list.Items.Select(item => item.Value).OfType<ValueSyntax>()] : [];
        if (items.Length < fewest || items.Length > most)
        {
            string count = fewest == most ? $"{fewest}" : $"{fewest} to {most}";
            string found = value is ArraySyntax ? $"a list of {items.Length.ToString(CultureInfo.InvariantCulture)}" : CaseValueReader.Describe(value);
            problems.Add(line, key, found, $"a list of {count} values of {signal.Name}");
            return null;
        }

        List<double> numbers = [];
        List<string> read = [];
        foreach (ValueSyntax item in items)
        {
            if (Read(key, item.Span.Start.Line + 1, signal, item, out string? word) is not double number) return null;
            numbers.Add(number);
            if (word != null) read.Add(word);
        }

        words = read;
        return numbers;
    }

    private double? ReadWord(string key, int line, Signal signal, ValueSyntax value, string[] words, out string? word)
    {
        word = value is StringValueSyntax { Value: string text } && words.Contains(text) ? text : null;
        if (word != null) return SignalText.IdOf(signal, word);
        string nearest = value is StringValueSyntax { Value: string misspelt } && Words.Nearest(misspelt, words) is string near ? $"; the nearest is {Words.Quote(near)}" : "";
        problems.Add(line, key, CaseValueReader.Describe(value), $"for {signal.Name}: {Words.Or(words.Select(Words.Quote))}{nearest}");
        return null;
    }

    private double? ReadPlain(string key, int line, Signal signal, ValueSyntax value)
    {
        double? number = value switch
        {
            IntegerValueSyntax whole => whole.Value,
            FloatValueSyntax real when double.IsFinite(real.Value) => real.Value,
            _ => null,
        };
        if (number == null) problems.Add(line, key, CaseValueReader.Describe(value), $"a plain number, for {signal.Name}");
        return number;
    }
}
