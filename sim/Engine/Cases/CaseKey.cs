using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Cases;

/// <summary>One key of the case file: how it is written, what it accepts and what it means.</summary>
public sealed class CaseKey
{
    /// <summary>Most characters of a text.</summary>
    internal const int LongestText = 200;

    private CaseValue? _defaultValue;

    internal CaseKey(string path, CaseValueKind kind, string example, string summary)
    {
        Path = path;
        Kind = kind;
        Example = example;
        Summary = summary;
        Table = path.Contains('.') ? path[..path.LastIndexOf('.')] : "";
    }

    /// <summary>The key with its table: motor.armature-resistance.</summary>
    public string Path { get; }

    /// <summary>How the value is written.</summary>
    public CaseValueKind Kind { get; }

    /// <summary>A value as it stands in a file, with its quotes.</summary>
    public string Example { get; }

    /// <summary>What the key means, one line.</summary>
    public string Summary { get; }

    /// <summary>What the value measures; null for texts, choices, counts and ratios.</summary>
    public Dimension? Dimension => Range?.Dimension;

    /// <summary>The numbers accepted, SI; null for texts and choices. In a list it holds for each item.</summary>
    public CaseRange? Range { get; internal init; }

    /// <summary>The value taken when the key is left out, as it would be written; null when there is none.</summary>
    public string? DefaultText { get; internal init; }

    /// <summary>That value, read once; the key must have one.</summary>
    internal CaseValue DefaultValue => _defaultValue ??= CaseValueReader.Default(this);

    /// <summary>The texts accepted; empty unless the key is a choice.</summary>
    public IReadOnlyList<string> Choices { get; internal init; } = [];

    /// <summary>The choices in words, where a list of them would be long; null: the list.</summary>
    internal string? ChoicesText { get; init; }

    /// <summary>The key of which a percentage is accepted, or null.</summary>
    public CaseKey? PercentOf => IsPercentOfRatedCurrent ? CaseKeys.MotorRatedCurrent : null;

    /// <summary>True when the word "none" is accepted and means no limit.</summary>
    public bool AllowsNone { get; internal init; }

    /// <summary>Fewest values in a list.</summary>
    public int FewestItems { get; internal init; } = 1;

    /// <summary>Most values in a list: as many as a starter has stages, unless the key says otherwise.</summary>
    public int MostItems { get; internal init; } = Core.Settings.MostStages;

    /// <summary>True when a count has to be even.</summary>
    public bool IsEven { get; internal init; }

    /// <summary>True when a time has to be a whole number of microseconds, the controller's unit of time.</summary>
    public bool IsWholeMicroseconds { get; internal init; }

    /// <summary>The table of the key: motor.construction; empty for a key above all tables.</summary>
    public string Table { get; }

    /// <summary>The key without its table: armature-resistance.</summary>
    public string Name => Path[(Path.LastIndexOf('.') + 1)..];

    /// <summary>What is accepted, in words with an example, for a message.</summary>
    public string Allowed => Kind switch
    {
        CaseValueKind.Text => $"one line of 1 to {LongestText} characters in quotes, e.g. {Example}",
        CaseValueKind.Choice => ChoicesText ?? Words.Or(Choices.Select(Words.Quote)),
        CaseValueKind.Count =>
            $"{(IsEven ? "an even" : "a")} whole number, {Range!.Text}, without unit, e.g. {Example}",
        CaseValueKind.Ratio => $"a plain number {Range!.Text}, e.g. {Example}",
        CaseValueKind.Quantities => $"{FewestItems} to {MostItems} values, each {Range!.Text}, e.g. {Example}",
        _ => RangeText + Alternatives,
    };

    /// <summary>As <see cref="Allowed"/>, with the dimension and its units.</summary>
    public string AllowedInFull => Kind switch
    {
        CaseValueKind.Quantity => $"{Units.Allowed(Dimension!.Value)}, {RangeText}{Alternatives}",
        CaseValueKind.Quantities =>
            $"a list of {FewestItems} to {MostItems} values, each {Units.Allowed(Dimension!.Value)}, {RangeText}",
        _ => Allowed,
    };

    // A flag and not the other key: the keys are created in no particular order.
    internal bool IsPercentOfRatedCurrent { get; init; }

    private string RangeText =>
        $"{Range!.Text}{(IsWholeMicroseconds ? ", a whole number of microseconds" : "")}, e.g. {Example}";

    private string Alternatives =>
        (AllowsNone ? ", or \"none\"" : "") + (PercentOf is null ? "" : $", or a percentage of {PercentOf.Path}");

    /// <inheritdoc/>
    public override string ToString() => Path;
}
