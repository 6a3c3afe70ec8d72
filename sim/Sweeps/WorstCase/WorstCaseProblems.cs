using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What keeps a case from being designed for the worst case.</summary>
internal static class WorstCaseProblems
{
    /// <summary>Every problem.</summary>
    public static IEnumerable<CaseProblem> Of(CaseFile file)
    {
        if (file.Tolerances.Count == 0) yield return new CaseProblem(file.FileName, 0, "", "a case without tolerances", "[tolerances] with at least one quantity that may differ");
        if (!file.Has(CaseKeys.StarterPeakCurrent)) yield return file.Problem(CaseKeys.StarterPeakCurrent, "nothing", "the peak that the worst case must keep to");
        if (file.Has(CaseKeys.StarterCutoutVoltages)) yield return file.Problem(CaseKeys.StarterCutoutVoltages, "it in a case whose thresholds are to be chosen", "the case without it");
        if (file.Has(CaseKeys.ExpectFault)) yield return file.Problem(CaseKeys.ExpectFault, "it in a case whose start must always complete", "the case without it");
        if (!file.IsYes(CaseKeys.SensorsSpeed)) yield return file.Problem(CaseKeys.SensorsSpeed, "no speed sensor", "one: the bound follows from the measured speed");
        if (file.Has(CaseKeys.StarterSections)) yield break;
        foreach (CaseTolerance sections in file.Tolerances.Where(tolerance => tolerance.Key == CaseKeys.StarterSections && tolerance.Basis != ToleranceBasis.Ratio))
        {
            yield return new CaseProblem(file.FileName, sections.Line, sections.Path, $"\"{sections.Written}\", which is no part of a section that is still to be chosen", "percent, in the manner of \"5 %\"");
        }
    }
}
