using System.Collections.Generic;

namespace StarterCtl.Sweeps.Sensitivity;

/// <summary>Which inputs drive an outcome.</summary>
/// <param name="Outcome">Name of its column; of <see cref="Results.SweepColumns.Passed"/> 1 stands for passed, 0 for not.</param>
/// <param name="Points">Points that count.</param>
/// <param name="PointsWithoutValue">Points that do not, for in one of their rows the outcome did not happen: the indices say nothing about such starts.</param>
/// <param name="StandardDeviation">Of the outcome, in its unit; null: no points.</param>
/// <param name="Inputs">The inputs, the largest total index first; empty: the outcome does not vary, or too few points count.</param>
public sealed record OutcomeSensitivity(string Outcome, long Points, long PointsWithoutValue, double? StandardDeviation, IReadOnlyList<InputSensitivity> Inputs);
