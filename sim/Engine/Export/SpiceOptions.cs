using System.Collections.Generic;

namespace StarterCtl.Engine.Export;

/// <summary>What the circuit simulator shall do, and how finely.</summary>
public sealed record SpiceOptions
{
    /// <summary>Relative error of a solved step, <c>reltol</c>, above 0.</summary>
    public double RelativeTolerance { get; init; } = 1e-6;

    /// <summary>How many times the estimated error of a step may pass its tolerance, <c>trtol</c>, above 0. The simulator's own default is 7.</summary>
    public double StepErrorFactor { get; init; } = 1;

    /// <summary>Longest step, s, above 0.</summary>
    public double LongestStepSeconds { get; init; } = 100e-6;

    /// <summary>How many times the whole run is repeated before the figures are printed, 1 or more; for measuring speed.</summary>
    public int Runs { get; init; } = 1;

    /// <summary>
    /// When each stage contact closes, s, for a comparison of nothing but the solvers; null: the netlist decides by the back-EMF.
    /// </summary>
    public IReadOnlyList<double>? ClosingSeconds { get; init; }
}
