using System.Collections.Generic;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>What the search found.</summary>
/// <param name="Sections">A network for each section, first cut out first.</param>
/// <param name="Design">The starter with them.</param>
/// <param name="Key">What it was compared by.</param>
/// <param name="IsProven">True when everything that could be better was looked through or ruled out.</param>
internal sealed record PartsFound(IReadOnlyList<PartNetwork> Sections, StarterDesign Design, PartsKey Key, bool IsProven);
