using System.Collections.Generic;

namespace StarterCtl.Core.Tests;

/// <summary>What stands in a controller's event log.</summary>
internal static class Logged
{
    internal static List<FaultId> Faults(Bench bench)
    {
        List<FaultId> faults = [];
        EventLog log = bench.Controller.Log;
        for (int i = 0; i < log.Count; i++)
        {
            if (log.KindAt(i) == EventKind.Fault) faults.Add((FaultId)log.NumberAt(i));
        }

        return faults;
    }

    internal static List<(Phase From, Phase To)> Transitions(Bench bench)
    {
        List<(Phase, Phase)> transitions = [];
        EventLog log = bench.Controller.Log;
        for (int i = 0; i < log.Count; i++)
        {
            if (log.KindAt(i) == EventKind.Phase) transitions.Add(((Phase)(int)log.ValueAt(i), (Phase)log.NumberAt(i)));
        }

        return transitions;
    }
}
