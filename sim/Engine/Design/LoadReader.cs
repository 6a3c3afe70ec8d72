using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads the load of a case, its table of torque over speed included.</summary>
internal static class LoadReader
{
    // Points closer than this part of the last speed are one point.
    private const double LeastStep = 1e-6;

    /// <summary>What is missing or wrong; nothing where there is a usable load.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file)
    {
        if (!file.Has(CaseKeys.LoadTableSpeeds) && !file.Has(CaseKeys.LoadTableTorques)) yield break;
        CaseProblem[] missing = [.. file.MissingOf(CaseKeys.LoadTableSpeeds, CaseKeys.LoadTableTorques)];
        foreach (CaseProblem problem in missing) yield return problem;
        if (missing.Length > 0) yield break;

        IReadOnlyList<double> speeds = file.Numbers(CaseKeys.LoadTableSpeeds);
        int torques = file.Numbers(CaseKeys.LoadTableTorques).Count;
        bool rises = speeds[0] == 0 && speeds.Zip(speeds.Skip(1)).All(pair => pair.Second - pair.First > LeastStep * speeds[^1]);
        if (!rises) yield return file.Problem(CaseKeys.LoadTableSpeeds, $"\"{file.Written(CaseKeys.LoadTableSpeeds)}\"", "speeds that begin with 0 rpm and rise, each by more than a millionth of the last");
        if (torques != speeds.Count) yield return file.Problem(CaseKeys.LoadTableTorques, $"{torques} torques for {speeds.Count} speeds", "one for each of load.table-speeds");
    }

    /// <summary>Reads the load of a case without <see cref="Problems"/>.</summary>
    public static Load Read(CaseFile file) =>
        new(file.Number(CaseKeys.LoadConstantTorque), file.Number(CaseKeys.LoadViscousTorque), file.Number(CaseKeys.LoadFanTorque))
        {
            HoistNewtonMetres = file.Number(CaseKeys.LoadHoistTorque),
            Table = file.Has(CaseKeys.LoadTableSpeeds) ? new LoadTable(file.Numbers(CaseKeys.LoadTableSpeeds), file.Numbers(CaseKeys.LoadTableTorques)) : null,
        };
}
