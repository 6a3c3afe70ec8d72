using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Parts;

/// <summary>
/// Every network of a number of parts in series and parallel, in any nesting, bridges apart. A network in series has members that are
/// single or in parallel, and the other way round, so that each is made once.
/// </summary>
internal sealed class NetworkCatalogue
{
    /// <summary>Most networks that are held.</summary>
    public const int Most = 400_000;

    private const long MostTried = 40_000_000;

    private readonly double _lowestOhms;
    private readonly double _highestOhms;
    private readonly bool _areAlike;
    private readonly Dictionary<double, PartNetwork> _byOhms = [];
    private readonly List<PartNetwork> _inRange = [];
    private long _tried;

    private NetworkCatalogue(double lowestOhms, double highestOhms, bool areAlike)
    {
        _lowestOhms = lowestOhms;
        _highestOhms = highestOhms;
        _areAlike = areAlike;
    }

    /// <summary>Makes the networks within a range of resistance.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="mostParts">Most parts in a network.</param>
    /// <param name="startsPerHour">Starts an hour that ratings are held against.</param>
    /// <param name="lowestOhms">Lowest, ohm.</param>
    /// <param name="highestOhms">Highest, ohm.</param>
    /// <returns>The networks with rising resistance; null when they are too many to look through.</returns>
    public static IReadOnlyList<PartNetwork>? Between(IReadOnlyList<Part> parts, int mostParts, double startsPerHour, double lowestOhms, double highestOhms)
    {
        // Preferred values differ by their resistance alone: of the same resistance the network of fewest parts is enough.
        NetworkCatalogue catalogue = new(lowestOhms, highestOhms, parts.All(part => part.Rating == null));
        return catalogue.Make([.. parts.Where(part => part.Quantity != 0).Select(part => new PartNetwork(part, startsPerHour))], mostParts)
            ? [.. catalogue._inRange.OrderBy(network => network.Ohms).ThenBy(network => network.Price).ThenBy(network => network.Count)]
            : null;
    }

    private bool Make(List<PartNetwork> singles, int mostParts)
    {
        // Index: number of parts. What is in series may be a member in parallel, and the other way round; a single part both.
        List<PartNetwork>[] inSeries = [[], singles], inParallel = [[], singles];
        foreach (PartNetwork single in singles) Keep(single);
        for (int count = 2; count <= mostParts; count++)
        {
            bool isWhole = count == mostParts;
            List<PartNetwork> series = [], parallel = [];
            if (!Combine(true, inParallel, count, isWhole, series) || !Combine(false, inSeries, count, isWhole, parallel)) return false;
            inSeries = [.. inSeries, series];
            inParallel = [.. inParallel, parallel];
        }

        return true;
    }

    private bool Combine(bool isSeries, List<PartNetwork>[] membersBySize, int count, bool isWhole, List<PartNetwork> made)
    {
        PartNetwork[] chosen = new PartNetwork[count];

        // Members in the order of size and place, so that each set of them comes once.
        bool Add(int used, int left, int fromSize, int fromIndex)
        {
            for (int size = fromSize; size <= left && size < count; size++)
            {
                if (size < left && left - size < size) continue;
                List<PartNetwork> members = membersBySize[size];
                for (int i = size == fromSize ? fromIndex : 0; i < members.Count; i++)
                {
                    chosen[used] = members[i];
                    if (left > size)
                    {
                        if (!Add(used + 1, left - size, size, i)) return false;
                    }
                    else if (!Take(isSeries, chosen, used + 1, isWhole, made))
                    {
                        return false;
                    }
                }
            }

            return true;
        }

        return Add(0, count, 1, 0);
    }

    private bool Take(bool isSeries, PartNetwork[] chosen, int members, bool isWhole, List<PartNetwork> made)
    {
        if (++_tried > MostTried) return false;
        double ohms = PartNetwork.OhmsOf(isSeries, chosen, members);
        if (isWhole && (ohms < _lowestOhms || ohms > _highestOhms)) return true;
        PartNetwork network = PartNetwork.Of(isSeries, chosen[..members]);
        if (Keep(network) && !isWhole) made.Add(network);
        return _inRange.Count <= Most && made.Count <= Most;
    }

    private bool Keep(PartNetwork network)
    {
        if (_areAlike && !_byOhms.TryAdd(network.Ohms, network)) return false;
        if (network.Ohms >= _lowestOhms && network.Ohms <= _highestOhms) _inRange.Add(network);
        return true;
    }
}
