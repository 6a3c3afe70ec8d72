using System;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>
/// Every combination of levels that lie evenly from the low to the high limit; two levels are the corners. They come in an order that the
/// seed shuffles, so that the first of them are a fair sample of all.
/// </summary>
public sealed class FactorialSampling : ISampling
{
    /// <summary>Most combinations that can be numbered.</summary>
    public const long MostPoints = 1L << 62;

    private readonly IndexPermutation _order;
    private readonly int _levels;

    /// <summary>Numbers the combinations.</summary>
    /// <param name="dimensions">Number of variables.</param>
    /// <param name="levels">Levels of each, 2 or more.</param>
    /// <param name="seed">From which their order follows.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are more combinations than <see cref="MostPoints"/>.</exception>
    public FactorialSampling(int dimensions, int levels, int seed)
    {
        long? count = CountOf(dimensions, levels);
        ArgumentOutOfRangeException.ThrowIfNotEqual(count.HasValue, true, nameof(dimensions));
        _levels = levels;
        Count = count;
        _order = new IndexPermutation(count.GetValueOrDefault(), seed, 0);
    }

    /// <inheritdoc/>
    public long? Count { get; }

    /// <inheritdoc/>
    public bool IsOfLevels => true;

    /// <summary>Number of combinations; null: more than <see cref="MostPoints"/>.</summary>
    public static long? CountOf(int dimensions, int levels)
    {
        long count = 1;
        for (int dimension = 0; dimension < dimensions; dimension++)
        {
            if (count > MostPoints / levels) return null;
            count *= levels;
        }

        return count;
    }

    /// <inheritdoc/>
    public double At(long point, int dimension)
    {
        long combination = _order.At(point);
        for (int before = 0; before < dimension; before++) combination /= _levels;
        return (double)(combination % _levels) / (_levels - 1);
    }
}
