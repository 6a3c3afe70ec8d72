using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>Holds a run against its limits.</summary>
internal static class RunJudge
{
    /// <summary>Judges a run: peak current, peak torque, time to full supply and stage order of every start, faults.</summary>
    public static Verdict Judge(CaseFile file, CaseDesign designed, Machine machine, RunResult result)
    {
        double peakLimit = PeakLimitAmps(file, designed);
        double torqueLimit = file.Has(CaseKeys.LimitsPeakTorque) ? file.Number(CaseKeys.LimitsPeakTorque) : machine.Constant * peakLimit;
        List<StartPart> starts = StartPart.Of(result);
        return new Verdict(
        [
            new("peak current", !StarterDesigner.Exceeds(result.PeakAmps, peakLimit), $"{Text.Number(result.PeakAmps)} A", $"at most {Text.Number(peakLimit)} A"),
            new("peak torque", !StarterDesigner.Exceeds(result.PeakTorqueNewtonMetres, torqueLimit), $"{Text.Number(result.PeakTorqueNewtonMetres)} N m", $"at most {Text.Number(torqueLimit)} N m"),
            StartTime(file, starts),
            StageOrder(designed.Design.StageCount, starts),
            new("faults", result.Faults.Count == 0, result.Faults.Count == 0 ? "none" : string.Join(", ", result.Faults.Select(fault => fault.Id)), "no fault"),
        ]);
    }

    // A peak that the design itself announced by rounding the count up is allowed; one from too few stages, real parts or
    // hand thresholds is not.
    private static double PeakLimitAmps(CaseFile file, CaseDesign designed)
    {
        if (file.Has(CaseKeys.LimitsPeakCurrent)) return file.Number(CaseKeys.LimitsPeakCurrent);
        StarterDesign design = designed.Design;
        bool isComputed = designed.Input.SectionOhms == null && designed.Input.CutoutVolts == null;
        bool isRounding = design.StageCountExact - design.StageCount <= StageGrading.CountAllowance;
        return isComputed && isRounding ? design.WorstPeakAmps : designed.Input.PeakAmps ?? design.PeakAmps;
    }

    private static LimitCheck StartTime(CaseFile file, List<StartPart> starts)
    {
        double? limit = file.Has(CaseKeys.LimitsStartTime) ? file.Number(CaseKeys.LimitsStartTime) : null;
        string allowed = limit is double seconds ? $"full supply within {Text.Number(seconds)} s" : "full supply before the run ends";
        StartPart[] judged = [.. starts.Where(start => !start.IsStopped)];
        if (judged.Length == 0) return new LimitCheck("start time", false, starts.Count == 0 ? "never started" : "stopped before full supply", allowed);
        if (judged.Any(start => start.TakenSeconds == null)) return new LimitCheck("start time", false, "full supply never reached", allowed);
        double worst = judged.Max(start => start.TakenSeconds!.Value);
        return new LimitCheck("start time", !(worst > limit), $"{Text.Number(worst)} s", allowed);
    }

    private static LimitCheck StageOrder(int stageCount, List<StartPart> starts)
    {
        bool inOrder = starts.Count > 0;
        foreach (StartPart start in starts)
        {
            bool isRun = start.Stages.SequenceEqual(Enumerable.Range(1, start.Stages.Count));
            inOrder &= isRun && (start.IsStopped || start.Stages.Count == stageCount);
        }

        string seen = string.Join(", then ", starts.Select(start => start.Stages.Count == 0 ? "no cutout" : string.Join(" ", start.Stages)));
        return new LimitCheck("stage order", inOrder, seen.Length == 0 ? "never started" : seen, $"1 to {stageCount} in order");
    }

    /// <summary>One start of a run.</summary>
    /// <param name="TakenSeconds">Time to the full supply, s; null when it was never reached.</param>
    /// <param name="IsStopped">True when the operator stopped it before.</param>
    /// <param name="Stages">Stages cut out, in the order in which it happened.</param>
    private sealed record StartPart(double? TakenSeconds, bool IsStopped, IReadOnlyList<int> Stages)
    {
        public static List<StartPart> Of(RunResult result)
        {
            List<StartPart> starts = [];
            for (int i = 0; i < result.Phases.Count; i++)
            {
                if (result.Phases[i].Phase != Phase.Accelerating) continue;
                double began = result.Phases[i].Seconds;
                PhaseEntry? next = i + 1 < result.Phases.Count ? result.Phases[i + 1] : null;
                double end = next?.Seconds ?? double.PositiveInfinity;
                starts.Add(new StartPart(
                    next?.Phase == Phase.Running ? end - began : null,
                    next?.Phase == Phase.Stopping,
                    [.. result.Cutouts.Where(cutout => cutout.Seconds >= began && cutout.Seconds <= end).Select(cutout => cutout.Stage)]));
            }

            return starts;
        }
    }
}
