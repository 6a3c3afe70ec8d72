namespace StarterCtl.Sweeps.Sampling;

/// <summary>How the points of a sweep are chosen.</summary>
public enum SamplingMethod
{
    /// <summary>Sobol's sequence, shifted by the seed.</summary>
    Sobol,

    /// <summary>Latin hypercube: of as many equal slices of each variable as there are points, each holds one.</summary>
    Latin,

    /// <summary>Every combination of low and high limits.</summary>
    Corners,

    /// <summary>Every combination of several levels from the low to the high limit.</summary>
    Factorial,

    /// <summary>Groups of points that tell what each variable contributes.</summary>
    Sensitivity,
}
