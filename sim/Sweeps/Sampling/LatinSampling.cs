using System.Linq;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>
/// A Latin hypercube: each variable's slices are dealt out to the points in a shuffled order of its own, and each point lies anywhere in its
/// slice. The number of points is part of the design, so that another count is another sweep; any point of it is found by itself.
/// </summary>
/// <remarks>M. D. McKay, R. J. Beckman and W. J. Conover, Technometrics 21 (1979), 239-245, from memory.</remarks>
public sealed class LatinSampling : ISampling
{
    // Streams of places inside a slice lie behind those of the orders.
    private const ulong PlaceStream = 1UL << 32;

    private readonly IndexPermutation[] _orders;
    private readonly long _count;
    private readonly int _seed;

    /// <summary>Deals the slices out.</summary>
    /// <param name="dimensions">Number of variables.</param>
    /// <param name="count">Number of points, 1 or more.</param>
    /// <param name="seed">From which everything follows.</param>
    public LatinSampling(int dimensions, long count, int seed)
    {
        _count = count;
        _seed = seed;
        _orders = [.. Enumerable.Range(0, dimensions).Select(dimension => new IndexPermutation(count, seed, (ulong)dimension))];
    }

    /// <inheritdoc/>
    public long? Count => _count;

    /// <inheritdoc/>
    public bool IsOfLevels => false;

    /// <inheritdoc/>
    public double At(long point, int dimension)
    {
        double place = ((SeedMix.Bits(_seed, PlaceStream + (ulong)dimension, (ulong)point) >> 12) + 0.5) / (1UL << 52);
        return (_orders[dimension].At(point) + place) / _count;
    }
}
