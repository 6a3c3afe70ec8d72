using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads the supply of a case, with the cable that leads to the starter.</summary>
internal static class SupplyReader
{
    /// <summary>What is missing or wrong; nothing where there is a usable supply.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file)
    {
        IEnumerable<CaseProblem> lonely = file.Lonely(
            (CaseKeys.SupplyCableLength, CaseKeys.SupplyCableArea),
            (CaseKeys.SupplyCableArea, CaseKeys.SupplyCableLength),
            (CaseKeys.SupplyCableMaterial, CaseKeys.SupplyCableLength),
            (CaseKeys.SupplyCableTemperature, CaseKeys.SupplyCableLength));
        foreach (CaseProblem problem in lonely) yield return problem;

        if (file.Has(CaseKeys.SupplyPermittedDip) && file.Number(CaseKeys.SupplyResistance) == 0)
            yield return file.Problem(CaseKeys.SupplyPermittedDip, "it on a bus without resistance, which never dips", "supply.resistance above 0 in the file");
    }

    /// <summary>The supply as the circuit sees it from the starter's input terminals: everything before them in one resistance.</summary>
    /// <param name="file">A case without <see cref="Problems"/>.</param>
    public static Supply Read(CaseFile file) =>
        new(file.Number(CaseKeys.SupplyVoltage), file.Number(CaseKeys.SupplyResistance) + (CableOf(file)?.Ohms ?? 0));

    /// <summary>The cable; null where the case gives none.</summary>
    /// <param name="file">A case without <see cref="Problems"/>.</param>
    public static Cable? CableOf(CaseFile file) => !file.Has(CaseKeys.SupplyCableLength) ? null
        : new Cable(
            ConductorMaterial.Named(file.Text(CaseKeys.SupplyCableMaterial)),
            file.Number(CaseKeys.SupplyCableLength),
            file.Number(CaseKeys.SupplyCableArea),
            file.Number(CaseKeys.SupplyCableTemperature));
}
