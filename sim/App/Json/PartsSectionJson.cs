using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Parts;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a section made of parts. Extend, never rename.</summary>
public sealed record PartsSectionJson(int Stage, double WantedOhms, double Ohms, string Network, double WorstVolts, IReadOnlyList<PartBurdenJson> Parts)
{
    /// <summary>The shape of a section.</summary>
    public static PartsSectionJson Of(BoughtSection section) =>
        new(section.Stage, section.WantedOhms, section.Network.Ohms, section.Network.ToString(), section.WorstVolts, [.. section.Burdens.Select(PartBurdenJson.Of)]);
}
