using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Cases;

/// <summary>What another file changes in a case, for one run of it. Messages about it name that file.</summary>
/// <param name="FileName">The other file.</param>
/// <param name="Entries">Its keys, those of its events included.</param>
/// <param name="EventLines">The line of each of its events.</param>
/// <param name="KeepsEvents">True when its events come beside the case's own and not instead of them.</param>
internal sealed record CaseChanges(string FileName, IReadOnlyList<CaseEntry> Entries, IReadOnlyList<int> EventLines, bool KeepsEvents)
{
    /// <summary>Both lists of events as one.</summary>
    /// <returns>In the order of time, the case's own first where times are the same; each list as it is where the other is empty.</returns>
    internal static List<CaseEvent> Merge(List<CaseEvent> own, List<CaseEvent> added) =>
        own.Count == 0 ? added : added.Count == 0 ? own : [.. own.Concat(added).OrderBy(happening => happening.AtSeconds)];
}
