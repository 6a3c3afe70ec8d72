using System.Globalization;

namespace StarterCtl.Engine.Cases;

/// <summary>The numbers that a key accepts. NaN is in no range.</summary>
/// <param name="Lowest">Lower end, SI.</param>
/// <param name="IsLowestIncluded">True when the lower end itself is accepted.</param>
/// <param name="Highest">Upper end, SI.</param>
/// <param name="IsHighestIncluded">True when the upper end itself is accepted.</param>
/// <param name="Text">The range in words, with units.</param>
/// <param name="Dimension">What is measured; null for plain numbers.</param>
public sealed record CaseRange(
    double Lowest,
    bool IsLowestIncluded,
    double Highest,
    bool IsHighestIncluded,
    string Text,
    Dimension? Dimension = null)
{
    /// <summary>More than zero, up to and with a quantity.</summary>
    /// <param name="dimension">What is measured.</param>
    /// <param name="highest">Upper end with its unit.</param>
    /// <returns>The range.</returns>
    public static CaseRange Above0(Dimension dimension, string highest) =>
        new(0, false, Units.Parse(highest, dimension), true, $"above 0, up to {highest}", dimension);

    /// <summary>Zero up to and with a quantity.</summary>
    /// <param name="dimension">What is measured.</param>
    /// <param name="highest">Upper end with its unit.</param>
    /// <returns>The range.</returns>
    public static CaseRange From0(Dimension dimension, string highest) =>
        new(0, true, Units.Parse(highest, dimension), true, $"0 to {highest}", dimension);

    /// <summary>Both ends included.</summary>
    /// <param name="dimension">What is measured.</param>
    /// <param name="lowest">Lower end with its unit.</param>
    /// <param name="highest">Upper end with its unit.</param>
    /// <returns>The range.</returns>
    public static CaseRange Between(Dimension dimension, string lowest, string highest) =>
        new(Units.Parse(lowest, dimension), true, Units.Parse(highest, dimension), true,
            $"{lowest} to {highest}", dimension);

    /// <summary>Whole numbers, both ends included.</summary>
    /// <param name="lowest">Lower end.</param>
    /// <param name="highest">Upper end.</param>
    /// <returns>The range.</returns>
    public static CaseRange Counts(int lowest, int highest) =>
        new(lowest, true, highest, true, string.Create(CultureInfo.InvariantCulture, $"{lowest} to {highest}"));

    /// <summary>Whether a number lies in the range.</summary>
    /// <param name="siValue">Any number, SI.</param>
    /// <returns>True when it is accepted; false for NaN.</returns>
    public bool Contains(double siValue) =>
        (IsLowestIncluded ? siValue >= Lowest : siValue > Lowest)
        && (IsHighestIncluded ? siValue <= Highest : siValue < Highest);
}
