using System;

namespace StarterCtl.Engine.Parts;

/// <summary>
/// What one choice is compared with another by: peak, price and count, the objective first. Peaks count in millionths of the
/// limit, so that no rounding decides.
/// </summary>
/// <param name="First">The objective.</param>
/// <param name="Second">The first of the others.</param>
/// <param name="Third">The last.</param>
internal readonly record struct PartsKey(long First, long Second, long Third) : IComparable<PartsKey>
{
    private const double PeakParts = 1e6;
    private const decimal PriceParts = 10_000;

    /// <summary>The key of a whole choice.</summary>
    public static PartsKey Of(PartsObjective objective, double peakAmps, double limitAmps, decimal price, int count)
    {
        long peak = (long)Math.Round(peakAmps / limitAmps * PeakParts), money = (long)(price * PriceParts);
        return objective switch
        {
            PartsObjective.Price => new PartsKey(money, peak, count),
            PartsObjective.Count => new PartsKey(count, peak, money),
            _ => new PartsKey(peak, money, count),
        };
    }

    /// <inheritdoc/>
    public int CompareTo(PartsKey other) => (First, Second, Third).CompareTo((other.First, other.Second, other.Third));
}
