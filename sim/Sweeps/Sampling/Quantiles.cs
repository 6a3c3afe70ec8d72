using MathNet.Numerics.Distributions;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>From a coordinate of the unit cube to a value of the plant, by the inverse of the distribution.</summary>
public static class Quantiles
{
    // Limits of a normal tolerance lie three standard deviations from its middle.
    private const double Spread = 3;

    private static readonly double Cut = Normal.CDF(0, 1, -Spread);

    /// <summary>The value below which a part of all values lies.</summary>
    /// <param name="variable">The variable.</param>
    /// <param name="part">The part, 0 to 1.</param>
    /// <returns>A value from the variable's low to its high limit, SI.</returns>
    public static double ValueAt(PlantVariable variable, double part) => variable.Shape switch
    {
        ToleranceShape.Normal => Between(variable, 0.5 + Normal.InvCDF(0, 1, Cut + part * (1 - 2 * Cut)) / (2 * Spread)),
        ToleranceShape.Triangular => System.Math.Clamp(Triangular.InvCDF(variable.Low, variable.High, variable.Nominal, part), variable.Low, variable.High),
        _ => Between(variable, part),
    };

    /// <summary>The value at a part of the way from the low to the high limit.</summary>
    public static double Between(PlantVariable variable, double part) =>
        System.Math.Clamp(variable.Low + part * (variable.High - variable.Low), variable.Low, variable.High);
}
