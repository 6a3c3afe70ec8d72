using System;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>
/// Sobol's sequence with the direction numbers of Joe and Kuo, in the order of the Gray code. A seed shifts every coordinate by bits of its own
/// (digital shift), which keeps how evenly the points lie and lets none fall on a limit.
/// </summary>
/// <remarks>I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967), 86-112, from memory.</remarks>
public sealed class SobolSampling : ISampling
{
    /// <summary>Dimensions that the table reaches.</summary>
    public const int MostDimensions = DirectionNumbers.MostDimensions;

    /// <summary>Points that 32 bits tell apart.</summary>
    public const long MostPoints = 1L << DirectionNumbers.Bits;

    private readonly uint[][] _directions;
    private readonly uint[] _shifts;

    /// <summary>Prepares the sequence.</summary>
    /// <param name="dimensions">Number of variables, 1 to <see cref="MostDimensions"/>.</param>
    /// <param name="seed">From which the shifts follow.</param>
    public SobolSampling(int dimensions, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dimensions, MostDimensions);
        _directions = new uint[dimensions][];
        _shifts = new uint[dimensions];
        for (int dimension = 0; dimension < dimensions; dimension++)
        {
            _directions[dimension] = DirectionNumbers.Of(dimension);
            _shifts[dimension] = (uint)(SeedMix.Bits(seed, (ulong)dimension) >> 32);
        }
    }

    /// <inheritdoc/>
    public long? Count => null;

    /// <inheritdoc/>
    public bool IsOfLevels => false;

    /// <summary>A coordinate without the seed's shift, as a part of 2^32.</summary>
    /// <param name="point">Number of the point, 0 to 2^32 - 1.</param>
    /// <param name="dimension">Number of the variable.</param>
    public uint BitsAt(long point, int dimension)
    {
        uint gray = (uint)point ^ ((uint)point >> 1), bits = 0;
        uint[] directions = _directions[dimension];
        for (int bit = 0; gray != 0; bit++, gray >>= 1)
        {
            if ((gray & 1) != 0) bits ^= directions[bit];
        }

        return bits;
    }

    /// <inheritdoc/>
    // The middle of the step that the bits stand for.
    public double At(long point, int dimension) => ((BitsAt(point, dimension) ^ _shifts[dimension]) + 0.5) / MostPoints;
}
