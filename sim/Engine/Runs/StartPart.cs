using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>One start of a run, or one return to the full supply after resistance was put back in a dip.</summary>
/// <param name="TakenSeconds">Time to the full supply, s, field building included; null when it was never reached.</param>
/// <param name="IsStopped">True when the operator stopped it before.</param>
/// <param name="FirstStage">Stage in effect when the line was in; above 1 for a turning shaft or a return.</param>
/// <param name="HasPutBack">True when resistance was put back on the way: its stages come again.</param>
/// <param name="Stages">Stages cut out, in the order in which it happened.</param>
internal sealed record StartPart(double? TakenSeconds, bool IsStopped, int FirstStage, bool HasPutBack, IReadOnlyList<int> Stages)
{
    // A contact that closes on the very tick that completes the start may carry a time a rounding behind it.
    private const double TimeRounding = 1e-9;

    /// <summary>Every start of a run, in the order in which they happened.</summary>
    public static List<StartPart> Of(RunResult result)
    {
        List<StartPart> starts = [];
        for (int i = 0; i < result.Phases.Count; i++)
        {
            if (result.Phases[i].Phase == Phase.Accelerating) starts.Add(PartAt(result, i));
        }

        return starts;
    }

    /// <summary>True when the stages went out one after the other, as far as the start went.</summary>
    /// <param name="stageCount">Number of stages.</param>
    public bool IsInOrder(int stageCount)
    {
        int next = FirstStage;
        foreach (int stage in Stages)
        {
            if (stage != next && !(HasPutBack && stage < next)) return false;
            next = stage + 1;
        }

        return IsStopped || next == stageCount + 1;
    }

    private static StartPart PartAt(RunResult result, int index)
    {
        PhaseEntry? before = index > 0 ? result.Phases[index - 1] : null;
        PhaseEntry? next = index + 1 < result.Phases.Count ? result.Phases[index + 1] : null;
        double began = result.Phases[index].Seconds, end = next?.Seconds ?? double.PositiveInfinity;
        double pressed = before is { Phase: Phase.FieldBuilding } ? before.Seconds : began;
        // A shaft that was slow all along is started on the first stage; only presetting and a dip begin further on.
        TimelineEntry[] entries = [.. result.Timeline.Where(entry => entry.Event == null && entry.Seconds >= began && entry.Seconds < end)];
        TimelineEntry? line = entries.FirstOrDefault(entry => entry.Reason is not (Reason.PresettingStages or Reason.WaitingForShaft));
        return new StartPart(
            next?.Phase == Phase.Running ? end - pressed : null,
            next?.Phase == Phase.Stopping,
            line?.Stage ?? 1,
            entries.Any(entry => entry.Reason == Reason.SupplyDip),
            [.. result.Cutouts.Where(cutout => cutout.Seconds >= began && cutout.Seconds <= end + TimeRounding).Select(cutout => cutout.Stage)]);
    }
}
