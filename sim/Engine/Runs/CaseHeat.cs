using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>What warms up in a case.</summary>
internal static class CaseHeat
{
    /// <summary>Reads it.</summary>
    /// <param name="file">The case.</param>
    /// <param name="sectionCount">Number of sections.</param>
    /// <param name="field">Field circuit; null: none.</param>
    /// <returns>Null where nothing does.</returns>
    /// <exception cref="CaseException">A key stands alone, or there are not as many capacities as sections.</exception>
    public static ThermalSetup? Of(CaseFile file, int sectionCount, FieldCircuit? field)
    {
        CaseProblem[] problems = [.. Problems(file, sectionCount, field)];
        if (problems.Length > 0) throw new CaseException(problems);
        if (!IsThere(file)) return null;
        return new ThermalSetup
        {
            Armature = WindingOf(file, CaseKeys.MotorThermalCapacity, CaseKeys.MotorThermalResistance),
            Field = WindingOf(file, CaseKeys.FieldThermalCapacity, CaseKeys.FieldThermalResistance),
            Sections = file.Has(CaseKeys.StarterSectionThermalCapacity) ? SectionsOf(file, sectionCount) : [],
            SectionPerKelvin = file.Number(CaseKeys.StarterSectionTemperatureCoefficient),
            AmbientCelsius = file.Number(CaseKeys.RunAmbientTemperature),
            WindingCelsius = MachineReader.WindingCelsius(file),
        };
    }

    /// <summary>Whether any temperature of a case follows its run.</summary>
    public static bool IsThere(CaseFile file) =>
        file.Has(CaseKeys.MotorThermalCapacity) || file.Has(CaseKeys.FieldThermalCapacity) || file.Has(CaseKeys.StarterSectionThermalCapacity);

    private static ThermalMass? WindingOf(CaseFile file, CaseKey capacity, CaseKey resistance)
    {
        if (!file.Has(capacity)) return null;
        double joulesPerKelvin = file.Number(capacity);
        return new ThermalMass(joulesPerKelvin, file.Has(resistance) ? joulesPerKelvin * file.Number(resistance) : double.PositiveInfinity);
    }

    private static ThermalMass[] SectionsOf(CaseFile file, int count)
    {
        IReadOnlyList<double> given = file.Numbers(CaseKeys.StarterSectionThermalCapacity);
        double seconds = file.Has(CaseKeys.StarterSectionCoolingTime) ? file.Number(CaseKeys.StarterSectionCoolingTime) : double.PositiveInfinity;
        return [.. Enumerable.Range(0, count).Select(i => new ThermalMass(given[given.Count == 1 ? 0 : i], seconds))];
    }

    /// <summary>Keys that stand alone, and as many capacities as there are no sections.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file, int sectionCount, FieldCircuit? field)
    {
        IEnumerable<CaseProblem> lonely = file.Lonely(
            (CaseKeys.MotorThermalResistance, CaseKeys.MotorThermalCapacity),
            (CaseKeys.FieldThermalResistance, CaseKeys.FieldThermalCapacity),
            (CaseKeys.StarterSectionCoolingTime, CaseKeys.StarterSectionThermalCapacity),
            (CaseKeys.StarterSectionTemperatureCoefficient, CaseKeys.StarterSectionThermalCapacity));
        foreach (CaseProblem problem in lonely) yield return problem;

        if (file.Has(CaseKeys.RunAmbientTemperature) && !IsThere(file)) yield return file.Problem(CaseKeys.RunAmbientTemperature, "it in a case in which nothing warms up", "a thermal capacity in the file");
        if (file.Has(CaseKeys.FieldThermalCapacity) && field == null) yield return file.Problem(CaseKeys.FieldThermalCapacity, "it in a case without a field circuit", "field.resistance in the file");
        int given = file.Has(CaseKeys.StarterSectionThermalCapacity) ? file.Numbers(CaseKeys.StarterSectionThermalCapacity).Count : 1;
        if (given != 1 && given != sectionCount) yield return file.Problem(CaseKeys.StarterSectionThermalCapacity, $"{given} values for {sectionCount} sections", $"one value, or {sectionCount}");
    }
}
