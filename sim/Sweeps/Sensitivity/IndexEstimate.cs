namespace StarterCtl.Sweeps.Sensitivity;

/// <summary>A share of an outcome's variance. Estimates of a share near 0 may lie a little below it.</summary>
/// <param name="Value">The share, 0 to 1 but for the error of the estimate.</param>
/// <param name="Low">Lower bound.</param>
/// <param name="High">Upper bound.</param>
public sealed record IndexEstimate(double Value, double Low, double High);
