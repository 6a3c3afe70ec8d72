namespace StarterCtl.Core;

/// <summary>One setting: its name, unit, range, default and the reason for it.</summary>
public sealed class SettingRow
{
    /// <summary>Which setting.</summary>
    public readonly SettingId Id;

    /// <summary>Name in text files and catalogues, such as minimum-dwell.</summary>
    public readonly string Name;

    /// <summary>Unit, or empty.</summary>
    public readonly string Unit;

    /// <summary>Lowest value allowed.</summary>
    public readonly float Lowest;

    /// <summary>True when the lowest value itself is allowed.</summary>
    public readonly bool IncludesLowest;

    /// <summary>Highest value allowed.</summary>
    public readonly float Highest;

    /// <summary>True for whole numbers, times in microseconds among them.</summary>
    public readonly bool IsWhole;

    /// <summary>Default in words; empty when it has none and must be set.</summary>
    public readonly string DefaultText;

    /// <summary>What it is for, and why it has this range and default.</summary>
    public readonly string Reason;

    /// <summary>Fills a row.</summary>
    public SettingRow(
        SettingId id, string name, string unit, float lowest, bool includesLowest, float highest, bool isWhole, string defaultText, string reason)
    {
        Id = id;
        Name = name;
        Unit = unit;
        Lowest = lowest;
        IncludesLowest = includesLowest;
        Highest = highest;
        IsWhole = isWhole;
        DefaultText = defaultText;
        Reason = reason;
    }

    /// <summary>True when a number lies in the range; NaN does not.</summary>
    public bool Allows(float number) =>
        number <= Highest && (IncludesLowest ? number >= Lowest : number > Lowest);

    /// <summary>True when a whole number lies in the range; single precision would round it into the range.</summary>
    public bool AllowsWhole(int number) => number >= (int)Lowest && number <= (int)Highest;
}
