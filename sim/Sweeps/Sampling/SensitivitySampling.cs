using System;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>
/// Points that tell what each quantity contributes. A group of rows belongs to each point of Sobol's sequence in twice as many dimensions as there
/// are quantities: the first half of its coordinates (A), the second half (B), then A with one quantity at a time taken from B, and last A with
/// the noise of B. A and B have noise of their own, so that noise and jitter count as one more quantity.
/// </summary>
/// <remarks>
/// A. Saltelli, P. Annoni, I. Azzini, F. Campolongo, M. Ratto and S. Tarantola, "Variance based sensitivity analysis of model output. Design and
/// estimator for the total sensitivity index", Computer Physics Communications 181 (2010), 259-270, from memory.
/// </remarks>
public sealed class SensitivitySampling : ISampling
{
    /// <summary>Most quantities: each takes two dimensions of the sequence.</summary>
    public const int MostDimensions = SobolSampling.MostDimensions / 2;

    /// <summary>Fewest points from which anything is said.</summary>
    public const int LeastPoints = 16;

    // Points where no count is given.
    private const int PointsUnasked = 1024;

    private const int First = 0;
    private const int Second = 1;
    private const int Swapped = 2;

    private readonly SobolSampling _sobol;
    private readonly int _dimensions;
    private readonly int _groupRows;

    /// <summary>Prepares the points.</summary>
    /// <param name="dimensions">Number of quantities, 1 to <see cref="MostDimensions"/>.</param>
    /// <param name="count">Rows at most; whole groups are taken. Null: 1024 points.</param>
    /// <param name="seed">From which the sequence's shifts follow.</param>
    public SensitivitySampling(int dimensions, long? count, int seed)
    {
        _sobol = new SobolSampling(2 * dimensions, seed);
        _dimensions = dimensions;
        _groupRows = GroupRows(dimensions);
        Count = (count / _groupRows ?? PointsUnasked) * _groupRows;
    }

    /// <inheritdoc/>
    public long? Count { get; }

    /// <inheritdoc/>
    public bool IsOfLevels => false;

    /// <summary>Rows of a group: A, B, and one for each quantity and for the noise.</summary>
    /// <param name="dimensions">Number of quantities.</param>
    public static int GroupRows(int dimensions) => dimensions + 3;

    /// <inheritdoc/>
    public double At(long point, int dimension)
    {
        (long group, long place) = Math.DivRem(point, _groupRows);
        bool isOfSecond = place == Second || place == Swapped + dimension;
        return _sobol.At(group, isOfSecond ? _dimensions + dimension : dimension);
    }

    /// <inheritdoc/>
    public long NoiseOf(long point)
    {
        (long group, long place) = Math.DivRem(point, _groupRows);
        return 2 * group + (place == Second || place == Swapped + _dimensions ? Second : First);
    }
}
