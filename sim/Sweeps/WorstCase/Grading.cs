using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What a starter consists of as far as its peaks go.</summary>
/// <param name="SectionOhms">Nominal sections, ohm, first cut out first.</param>
/// <param name="VoltsLeft">The controller's setting of each stage, V: supply less brush drop less this is the threshold.</param>
/// <param name="Lockout">Lockout current and dwell, which hold for all stages.</param>
internal sealed record Grading(IReadOnlyList<double> SectionOhms, IReadOnlyList<double> VoltsLeft, Lockout Lockout)
{
    /// <summary>Number of stages.</summary>
    public int StageCount => SectionOhms.Count;

    /// <summary>Sections that are in the circuit in a stage, ohm.</summary>
    /// <param name="stage">Counted from 0; the stage count is the armature alone.</param>
    public double InCircuit(int stage) => SectionOhms.Skip(stage).Sum();
}
