using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Parts;

/// <summary>The networks that one section can be, in groups of equal cost.</summary>
internal sealed class SectionCandidates
{
    /// <summary>Sorts the networks of a section.</summary>
    /// <param name="networks">With rising resistance.</param>
    /// <param name="objective">What makes a group: one price, one count, or all together.</param>
    public SectionCandidates(IReadOnlyList<PartNetwork> networks, PartsObjective objective)
    {
        Groups = objective switch
        {
            PartsObjective.Price => [.. networks.GroupBy(network => network.Price).OrderBy(group => group.Key).Select(group => new Group([.. group]))],
            PartsObjective.Count => [.. networks.GroupBy(network => network.Count).OrderBy(group => group.Key).Select(group => new Group([.. group]))],
            _ => networks.Count == 0 ? [] : [new Group([.. networks])],
        };
        LeastPrice = Groups.Count == 0 ? 0 : Groups.Min(group => group.LeastPrice);
        LeastCount = Groups.Count == 0 ? 0 : Groups.Min(group => group.LeastCount);
    }

    /// <summary>The groups, cheapest first.</summary>
    public IReadOnlyList<Group> Groups { get; }

    /// <summary>Least price of any.</summary>
    public decimal LeastPrice { get; }

    /// <summary>Fewest parts of any.</summary>
    public int LeastCount { get; }

    /// <summary>Networks of equal cost with rising resistance.</summary>
    internal sealed class Group
    {
        private readonly double[] _ohms;

        public Group(PartNetwork[] networks)
        {
            Networks = networks;
            _ohms = [.. networks.Select(network => network.Ohms)];
            LeastPrice = networks.Min(network => network.Price);
            LeastCount = networks.Min(network => network.Count);
        }

        public PartNetwork[] Networks { get; }

        public decimal LeastPrice { get; }

        public int LeastCount { get; }

        /// <summary>Index of the first network that is not below a resistance.</summary>
        public int FirstNotBelow(double ohms)
        {
            int found = Array.BinarySearch(_ohms, ohms);
            if (found < 0) return ~found;
            while (found > 0 && _ohms[found - 1] >= ohms) found--;
            return found;
        }
    }
}
