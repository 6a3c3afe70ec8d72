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
    /// <summary>Judges a run: peak current, peak torque, time to full supply, stage order, faults.</summary>
    public static Verdict Judge(CaseFile file, CaseDesign designed, Machine machine, RunResult result)
    {
        double peakLimit = PeakLimitAmps(file, designed);
        double torqueLimit = file.Has(CaseKeys.LimitsPeakTorque) ? file.Number(CaseKeys.LimitsPeakTorque) : machine.Constant * peakLimit;
        return new Verdict(
        [
            new("peak current", !StarterDesigner.Exceeds(result.PeakAmps, peakLimit), $"{Text.Number(result.PeakAmps)} A", $"at most {Text.Number(peakLimit)} A"),
            new("peak torque", !StarterDesigner.Exceeds(result.PeakTorqueNewtonMetres, torqueLimit), $"{Text.Number(result.PeakTorqueNewtonMetres)} N m", $"at most {Text.Number(torqueLimit)} N m"),
            StartTime(file, result),
            StageOrder(designed.Design.StageCount, result.Cutouts),
            new("faults", result.Faults.Count == 0, result.Faults.Count == 0 ? "none" : string.Join(", ", result.Faults.Select(fault => fault.Id)), "none"),
        ]);
    }

    // A peak that the design itself announced by rounding the count is allowed; one from real parts or hand thresholds is not.
    private static double PeakLimitAmps(CaseFile file, CaseDesign designed)
    {
        if (file.Has(CaseKeys.LimitsPeakCurrent)) return file.Number(CaseKeys.LimitsPeakCurrent);
        StarterDesign design = designed.Design;
        bool isComputed = designed.Input.SectionOhms == null && designed.Input.CutoutVolts == null;
        return isComputed ? design.WorstPeakAmps : design.PeakAmps;
    }

    private static LimitCheck StartTime(CaseFile file, RunResult result)
    {
        double? limit = file.Has(CaseKeys.LimitsStartTime) ? file.Number(CaseKeys.LimitsStartTime) : null;
        string allowed = limit is double seconds ? $"full supply within {Text.Number(seconds)} s" : "full supply before the run ends";
        PhaseEntry? began = result.Phases.FirstOrDefault(entry => entry.Phase == Phase.Accelerating);
        PhaseEntry? ran = result.Phases.FirstOrDefault(entry => entry.Phase == Phase.Running);
        if (began == null) return new LimitCheck("start time", false, "never started", allowed);
        if (ran == null) return new LimitCheck("start time", false, "full supply never reached", allowed);
        double taken = ran.Seconds - began.Seconds;
        return new LimitCheck("start time", !(taken > limit), $"{Text.Number(taken)} s", allowed);
    }

    private static LimitCheck StageOrder(int stageCount, IReadOnlyList<Cutout> cutouts)
    {
        bool inOrder = true;
        int expected = 1;
        foreach (Cutout cutout in cutouts)
        {
            // A new start begins again at stage 1.
            inOrder &= cutout.Stage == expected || cutout.Stage == 1;
            expected = cutout.Stage + 1;
        }

        inOrder &= expected == stageCount + 1;
        string seen = cutouts.Count == 0 ? "no cutout" : string.Join(" ", cutouts.Select(cutout => cutout.Stage));
        return new LimitCheck("stage order", inOrder, seen, $"1 to {stageCount} in order");
    }
}
