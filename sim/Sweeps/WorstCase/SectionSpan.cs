using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>How far real sections may lie from what they should be, as parts of it.</summary>
/// <param name="Low">Least real value over the nominal one, above 0, up to 1.</param>
/// <param name="High">Largest, 1 or more.</param>
internal readonly record struct SectionSpan(double Low, double High)
{
    /// <summary>Sections that are exact.</summary>
    public static SectionSpan Exact { get; } = new(1, 1);

    /// <summary>Limits of a section itself and of all behind it, in every combination.</summary>
    public (double Own, double Behind)[] Combinations() => Low == High ? [(Low, Low)] : [(Low, Low), (Low, High), (High, Low), (High, High)];

    /// <summary>The span of every section of a case, the widest of all where they differ.</summary>
    public static SectionSpan Of(IReadOnlyList<PlantVariable> variables)
    {
        PlantVariable[] sections = [.. variables.Where(variable => variable.Key == CaseKeys.StarterSections)];
        return sections.Length == 0 ? Exact : new(sections.Min(section => section.Low / section.Nominal), sections.Max(section => section.High / section.Nominal));
    }
}
