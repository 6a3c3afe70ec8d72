using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Runs;

/// <summary>Holds a run against its limits.</summary>
internal static class RunJudge
{
    /// <summary>Judges a run: peak current, peak torque, time to full supply and stage order of every start, faults.</summary>
    public static Verdict Judge(CaseFile file, CaseDesign designed, RunResult result)
    {
        double peakLimit = PeakLimitAmps(file, designed);
        double torqueLimit = file.Has(CaseKeys.LimitsPeakTorque) ? file.Number(CaseKeys.LimitsPeakTorque) : (designed.Input.Flux?.ConstantAt(peakLimit) ?? designed.Plate.MachineConstant!.Value) * peakLimit;
        List<StartPart> starts = StartPart.Of(result);
        LimitCheck peak = new("peak current", !StarterDesigner.Exceeds(result.PeakAmps, peakLimit), $"{Text.Number(result.PeakAmps)} A", $"at most {Text.Number(peakLimit)} A");
        LimitCheck torque = new("peak torque", !StarterDesigner.Exceeds(result.PeakTorqueNewtonMetres, torqueLimit), $"{Text.Number(result.PeakTorqueNewtonMetres)} N m", $"at most {Text.Number(torqueLimit)} N m");
        List<LimitCheck> checks = [];
        if (file.Has(CaseKeys.ExpectFault))
        {
            // A fault cuts a start off, so only what the case asks for by name is held against it.
            if (file.Has(CaseKeys.LimitsPeakCurrent)) checks.Add(peak);
            if (file.Has(CaseKeys.LimitsPeakTorque)) checks.Add(torque);
            if (file.Has(CaseKeys.LimitsStartTime)) checks.Add(StartTime(file, starts));
            checks.Add(ExpectedFault(file, result));
        }
        else
        {
            string seen = result.Faults.Count == 0 ? "none" : string.Join(", ", result.Faults.Select(fault => fault.Id));
            checks.AddRange([peak, torque, StartTime(file, starts), StageOrder(designed.Design.StageCount, starts), new("faults", result.Faults.Count == 0, seen, "no fault")]);
        }

        if (file.Has(CaseKeys.ExpectPhase)) checks.Add(ExpectedPhase(file, result));
        return new Verdict(checks);
    }

    private static LimitCheck ExpectedFault(CaseFile file, RunResult result)
    {
        string expected = file.Text(CaseKeys.ExpectFault);
        double? by = file.Has(CaseKeys.ExpectBy) ? file.Number(CaseKeys.ExpectBy) : null;
        FaultEntry? first = result.Faults.Count > 0 ? result.Faults[0] : null;
        bool passed = first?.Name == expected && !(first.Seconds > by);
        string seen = first == null ? "none" : $"{first.Name} at {Text.Number(first.Seconds)} s";
        return new LimitCheck("expected fault", passed, seen, $"{expected} as the first fault{(by is double seconds ? $", by {Text.Number(seconds)} s" : "")}");
    }

    private static LimitCheck ExpectedPhase(CaseFile file, RunResult result)
    {
        string seen = PhaseText.Name(result.Phases[^1].Phase), expected = file.Text(CaseKeys.ExpectPhase);
        return new LimitCheck("phase at the end", seen == expected, seen, "expected " + expected);
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
        bool inOrder = starts.Count > 0 && starts.All(start => start.IsInOrder(stageCount));
        string seen = string.Join(", then ", starts.Select(start => start.Stages.Count == 0 ? "no cutout" : string.Join(" ", start.Stages)));
        return new LimitCheck("stage order", inOrder, seen.Length == 0 ? "never started" : seen, $"1 to {stageCount} in order");
    }
}
