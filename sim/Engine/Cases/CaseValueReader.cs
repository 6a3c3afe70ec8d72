using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Reads the value of one key and holds it against what the key accepts.</summary>
internal sealed class CaseValueReader(ProblemList problems)
{
    private const string None = "none";

    /// <summary>Reads the value; null after a problem, which is in the list then.</summary>
    internal CaseValue? Read(CaseEntry entry) => entry.Key.Kind switch
    {
        CaseValueKind.Text => ReadText(entry),
        CaseValueKind.Choice => ReadChoice(entry),
        CaseValueKind.Quantity => ReadQuantity(entry),
        CaseValueKind.Quantities => ReadQuantities(entry),
        _ => ReadPlainNumber(entry),
    };

    /// <summary>The value that a key has when it is left out. The key must have one.</summary>
    internal static CaseValue Default(CaseKey key)
    {
        string text = key.DefaultText!;
        double number = text == None ? double.PositiveInfinity
            : key.Dimension is Dimension dimension ? Units.Parse(text, dimension)
            : key.Kind is CaseValueKind.Ratio or CaseValueKind.Count ? double.Parse(text, CultureInfo.InvariantCulture)
            : double.NaN;
        return new CaseValue(text, 0) { Number = number };
    }

    /// <summary>What kind of value stands in the file, for a message.</summary>
    internal static string Describe(ValueSyntax value) => value switch
    {
        StringValueSyntax text => Words.Quote(text.Value ?? ""),
        IntegerValueSyntax or FloatValueSyntax => $"{Token(value)}, a number without a unit",
        BooleanValueSyntax => Token(value),
        DateTimeValueSyntax => $"{Token(value)}, a date or time of day",
        ArraySyntax => "a list",
        InlineTableSyntax => "a table",
        _ => Token(value),
    };

    private CaseValue? ReadText(CaseEntry entry)
    {
        if (entry.Value is not StringValueSyntax { Value: string text }) return Refuse(entry, Describe(entry.Value));
        string trimmed = text.Trim();
        if (trimmed.Length is 0 or > CaseKey.LongestText) return Refuse(entry, Words.Quote(text));
        foreach (Rune letter in trimmed.EnumerateRunes())
        {
            if (!IsInvisible(letter)) continue;
            return Refuse(entry, string.Create(CultureInfo.InvariantCulture, $"{Words.Quote(text)}, with the invisible character U+{letter.Value:X4}"));
        }

        return new CaseValue(trimmed, entry.Line);
    }

    // Control characters drive a terminal; format characters hide and reorder what it shows.
    private static bool IsInvisible(Rune letter) => Rune.GetUnicodeCategory(letter)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private CaseValue? ReadChoice(CaseEntry entry)
    {
        if (entry.Value is not StringValueSyntax { Value: string text }) return Refuse(entry, Describe(entry.Value));
        if (entry.Key.Choices.Contains(text)) return new CaseValue(text, entry.Line);

        string? nearest = Words.Nearest(text, entry.Key.Choices);
        string hint = nearest is null ? "" : $"; the nearest is {Words.Quote(nearest)}";
        return Refuse(entry, Words.Quote(text), entry.Key.Allowed + hint);
    }

    private CaseValue? ReadQuantity(CaseEntry entry)
    {
        CaseKey key = entry.Key;
        if (entry.Value is not StringValueSyntax { Value: string text })
            return Refuse(entry, Describe(entry.Value), key.AllowedInFull);

        if (key.AllowsNone && text == None)
            return new CaseValue(text, entry.Line) { Number = double.PositiveInfinity };

        if (key.PercentOf is not null
            && Units.TrySplit(text, out double percent, out string unit, out _) && unit == "%")
            return new CaseValue(text, entry.Line) { Number = percent, IsPercent = true };

        if (!Units.TryParse(text, key.Dimension!.Value, out double number, out string found))
            return Refuse(entry, found, key.AllowedInFull);

        bool isFine = key.Range!.Contains(number) && (!key.IsWholeMicroseconds || IsWhole(number * 1e6));
        return isFine ? new CaseValue(text, entry.Line) { Number = number } : Refuse(entry, Words.Quote(text));
    }

    private CaseValue? ReadQuantities(CaseEntry entry)
    {
        CaseKey key = entry.Key;
        if (entry.Value is not ArraySyntax list) return Refuse(entry, Describe(entry.Value), key.AllowedInFull);

        ValueSyntax[] items = [.. list.Items.Select(item => item.Value).OfType<ValueSyntax>()];
        if (items.Length < key.FewestItems || items.Length > key.MostItems)
            return Refuse(entry, string.Create(CultureInfo.InvariantCulture, $"a list of {items.Length} values"));

        List<double> numbers = [];
        foreach (ValueSyntax item in items)
        {
            string found = Describe(item);
            int line = item.Span.Start.Line + 1;
            if (item is not StringValueSyntax { Value: string text }
                || !Units.TryParse(text, key.Dimension!.Value, out double number, out found))
                Report(line, key, found, key.AllowedInFull);
            else if (!key.Range!.Contains(number)) Report(line, key, Words.Quote(text), key.Allowed);
            else numbers.Add(number);
        }

        string written = string.Join(", ", items.OfType<StringValueSyntax>().Select(item => item.Value));
        return numbers.Count == items.Length ? new CaseValue(written, entry.Line) { Numbers = numbers } : null;
    }

    private CaseValue? ReadPlainNumber(CaseEntry entry)
    {
        bool isCount = entry.Key.Kind == CaseValueKind.Count;
        double number = entry.Value switch
        {
            IntegerValueSyntax whole => whole.Value,
            FloatValueSyntax real when !isCount => real.Value,
            _ => double.NaN,
        };
        bool isFine = entry.Key.Range!.Contains(number) && (!entry.Key.IsEven || number % 2 == 0);
        if (isFine) return new CaseValue(Token(entry.Value), entry.Line) { Number = number };

        bool isPlain = entry.Value is IntegerValueSyntax or FloatValueSyntax;
        return Refuse(entry, isPlain ? Token(entry.Value) : Describe(entry.Value));
    }

    private CaseValue? Refuse(CaseEntry entry, string found, string? allowed = null)
    {
        Report(entry.Line, entry.Key, found, allowed ?? entry.Key.Allowed);
        return null;
    }

    private void Report(int line, CaseKey key, string found, string allowed) =>
        problems.Add(line, key.Path, found, allowed);

    // 1e-9 of a microsecond per microsecond is far above the rounding of a double and far below anyone's intention.
    private static bool IsWhole(double number) => Math.Abs(number - Math.Round(number)) <= 1e-9 * number;

    private static string Token(ValueSyntax value) => value switch
    {
        IntegerValueSyntax whole => whole.Token?.Text ?? "",
        FloatValueSyntax real => real.Token?.Text ?? "",
        BooleanValueSyntax truth => truth.Token?.Text ?? "",
        _ => Words.Safe(value.ToString().Trim()),
    };
}
