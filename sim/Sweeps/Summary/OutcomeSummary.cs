using System.Collections.Generic;

namespace StarterCtl.Sweeps.Summary;

/// <summary>One outcome over all rows.</summary>
/// <param name="Name">Name of its column.</param>
/// <param name="Least">Least value.</param>
/// <param name="Quantiles">Quantiles, rising.</param>
/// <param name="Most">Largest value; positive infinity: in some row it did not happen.</param>
public sealed record OutcomeSummary(string Name, double Least, IReadOnlyList<QuantileEstimate> Quantiles, double Most);
