using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>What contradicts itself among the keys of duty, limits and contactors.</summary>
internal static class RatingsProblems
{
    /// <summary>Looks at a case whose run is prepared.</summary>
    public static IEnumerable<CaseProblem> Of(CaseFile file, PreparedRun prepared)
    {
        IEnumerable<CaseProblem> lonely = file.Lonely(
            (CaseKeys.StarterSectionHotSpotLimit, CaseKeys.StarterSectionThermalCapacity),
            (CaseKeys.StarterSectionHotSpotFactor, CaseKeys.StarterSectionHotSpotLimit),
            (CaseKeys.DutyRest, CaseKeys.DutyRunTime),
            (CaseKeys.DutyStartsPerHour, CaseKeys.DutyRunTime));
        foreach (CaseProblem problem in lonely) yield return problem;

        if (file.Has(CaseKeys.MotorWindingTemperatureLimit) && prepared.Setup.Heat is not ({ Armature: not null } or { Field: not null }))
            yield return file.Problem(CaseKeys.MotorWindingTemperatureLimit, "it in a case in which no winding warms up", "motor.thermal-capacity or field.thermal-capacity in the file");
        if (file.HasAnyOf(CaseKeys.DutyRunTime.Table) && prepared.Setup.Heat == null)
            yield return file.Problem(FirstOfDuty(file), "it in a case in which nothing warms up", "a thermal capacity in the file");
        foreach (CaseProblem problem in Times(file)) yield return problem;
        foreach (CaseProblem problem in Limits(file, prepared)) yield return problem;
        int contactors = prepared.Setup.SectionOhms.Count + 1 + (prepared.Setup.BrakeOhms == null ? 0 : 1);
        if (!file.Has(CaseKeys.ContactorsRatedCurrent)) yield break;
        int given = file.Numbers(CaseKeys.ContactorsRatedCurrent).Count;
        if (given != 1 && given != contactors)
            yield return file.Problem(CaseKeys.ContactorsRatedCurrent, $"{given} values for {contactors} contactors", $"one value, or {contactors}: line, {prepared.Setup.SectionOhms.Count} stages{(prepared.Setup.BrakeOhms == null ? "" : ", brake")}");
    }

    /// <summary>A run that is too short for its start.</summary>
    /// <param name="file">The case.</param>
    /// <param name="startSeconds">Time to behind the full supply, s.</param>
    public static IEnumerable<CaseProblem> ShortRun(CaseFile file, double startSeconds)
    {
        if (file.Has(CaseKeys.DutyRunTime) && file.Number(CaseKeys.DutyRunTime) < startSeconds)
            yield return file.Problem(CaseKeys.DutyRunTime, file.Written(CaseKeys.DutyRunTime), $"at least the {Text.Number(startSeconds)} s that the start takes from cold, with a tenth of it to spare");
    }

    private static IEnumerable<CaseProblem> Times(CaseFile file)
    {
        if (!file.Has(CaseKeys.DutyStartsPerHour)) yield break;
        int starts = file.Count(CaseKeys.DutyStartsPerHour);
        if (file.Has(CaseKeys.DutyRest))
            yield return file.Problem(CaseKeys.DutyStartsPerHour, $"{starts} beside duty.rest", "one of the two: either says how often the motor starts");
        if (!file.Has(CaseKeys.DutyRunTime)) yield break;
        double busy = starts * file.Number(CaseKeys.DutyRunTime);
        if (busy >= 3600)
            yield return file.Problem(CaseKeys.DutyStartsPerHour, $"{starts} starts of {file.Written(CaseKeys.DutyRunTime)}, {Text.Number(busy)} s in an hour", "starts and runs that leave a rest, less than 3600 s in an hour");
    }

    private static IEnumerable<CaseProblem> Limits(CaseFile file, PreparedRun prepared)
    {
        if (prepared.Setup.Heat is not ThermalSetup heat) yield break;
        foreach (CaseKey key in (CaseKey[])[CaseKeys.StarterSectionHotSpotLimit, CaseKeys.MotorWindingTemperatureLimit])
        {
            if (file.Has(key) && file.Number(key) <= heat.AmbientCelsius)
                yield return file.Problem(key, file.Written(key), $"above the {Text.Number(heat.AmbientCelsius)} degC around it (run.ambient-temperature)");
        }
    }

    private static CaseKey FirstOfDuty(CaseFile file) =>
        file.Has(CaseKeys.DutyRunTime) ? CaseKeys.DutyRunTime : file.Has(CaseKeys.DutyRest) ? CaseKeys.DutyRest : CaseKeys.DutyStartsPerHour;
}
