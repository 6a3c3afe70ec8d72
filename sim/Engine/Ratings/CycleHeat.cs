using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>Mean temperatures of every body over one cycle, in the order of the bodies.</summary>
/// <param name="StartCelsius">When start is pressed, degC.</param>
/// <param name="HighestCelsius">Highest in the cycle, degC.</param>
/// <param name="StartEndCelsius">At the end of the simulated start, degC.</param>
/// <param name="StopCelsius">At the stop, degC.</param>
/// <param name="EndCelsius">At the end of the rest, degC.</param>
/// <param name="Failure">Why the start did not come to the full supply; empty where it did.</param>
public sealed record CycleHeat(
    IReadOnlyList<double> StartCelsius,
    IReadOnlyList<double> HighestCelsius,
    IReadOnlyList<double> StartEndCelsius,
    IReadOnlyList<double> StopCelsius,
    IReadOnlyList<double> EndCelsius,
    string Failure);
