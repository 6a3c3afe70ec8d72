using System.Collections.Generic;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>A plant that a design is held against.</summary>
/// <param name="Values">The values of the case's variables, SI.</param>
/// <param name="Plant">The plant.</param>
internal sealed record PlantPoint(IReadOnlyList<double> Values, StaticPlant Plant);
