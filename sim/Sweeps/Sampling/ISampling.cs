namespace StarterCtl.Sweeps.Sampling;

/// <summary>Where in the unit cube the points of a sweep lie. Any point is found by itself: none depends on how many others are taken where.</summary>
public interface ISampling
{
    /// <summary>Points that there are; null: as many as are wanted.</summary>
    long? Count { get; }

    /// <summary>True where points lie on levels between the limits, whatever is likely there: 0 is the low limit, 1 the high one.</summary>
    bool IsOfLevels { get; }

    /// <summary>One coordinate of one point, 0 to 1.</summary>
    /// <param name="point">Number of the point, from 0.</param>
    /// <param name="dimension">Number of the variable, from 0.</param>
    double At(long point, int dimension);

    /// <summary>Number of the noise and jitter that a point is run with: points of the same number share them.</summary>
    /// <param name="point">Number of the point, from 0.</param>
    long NoiseOf(long point) => point;
}
