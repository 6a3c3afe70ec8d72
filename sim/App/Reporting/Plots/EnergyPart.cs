using System.Collections.Generic;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>One place where energy went.</summary>
/// <param name="Letter">Its letter in bar and table.</param>
/// <param name="Name">Its name.</param>
/// <param name="Joules">Energy, J.</param>
internal sealed record EnergyPart(char Letter, string Name, double Joules)
{
    /// <summary>Everything that the supply's energy became.</summary>
    public static EnergyPart[] Of(RunResult result)
    {
        List<(string Name, double Joules)> parts = [];
        for (int i = 0; i < result.SectionJoules.Count; i++) parts.Add(($"Heat in section {i + 1}", result.SectionJoules[i]));
        parts.Add(("Heat in armature and brushes", result.ArmatureJoules));
        parts.Add(("Taken by the load", result.LoadJoules));
        parts.Add(("Kinetic energy gained", result.KineticJoules));
        parts.Add(("Magnetic energy of the armature", result.MagneticJoules));
        if (result.BrakeJoules != 0) parts.Add(("Heat in the brake resistor", result.BrakeJoules));
        if (result.FieldJoules != 0) parts.Add(("Shunt winding, heat and magnetic energy", result.FieldJoules + result.FieldMagneticJoules));
        if (result.ArcJoules != 0) parts.Add(("Broken by opening contacts", result.ArcJoules));
        EnergyPart[] lettered = new EnergyPart[parts.Count];
        for (int i = 0; i < lettered.Length; i++) lettered[i] = new EnergyPart((char)('A' + i), parts[i].Name, parts[i].Joules);
        return lettered;
    }
}
