using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>Supply, line contact, starter sections and armature.</summary>
internal static class SpiceCircuit
{
    /// <summary>Writes the part.</summary>
    public static void Write(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        WriteSupply(text, scene, terms);
        WriteStarter(text, scene, terms);
        WriteArmature(text, scene.Setup.Machine, scene.Setup.SectionOhms.Count, terms);
    }

    private static void WriteSupply(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        RunSetup setup = scene.Setup;
        text.Part("supply: open-circuit voltage and source resistance, up to the starter's input terminals");
        text.Element($"Vsupply open_circuit 0 {SpiceText.Stepped(setup.Supply.OpenCircuitVolts, setup.Events.Where(happening => happening.SupplyVolts != null).Select(happening => (happening.AtSeconds, happening.SupplyVolts!.Value)))}");
        text.Line(setup.Supply.SourceOhms > 0
            ? $"Rsource open_circuit terminals {SpiceText.Number(setup.Supply.SourceOhms)}"
            : "Vsource open_circuit terminals DC 0");
        if (terms.FeedNode != "terminals")
        {
            text.Comment("The series winding of a short-shunt machine carries both currents.");
            text.Line($"Rseries_winding terminals {terms.FeedNode} {SpiceText.Number(setup.Field!.SharedOhms)}");
        }

        text.Comment("start is pressed where this voltage passes 0");
        text.Element($"Vstart start 0 {(scene.StartSeconds > 0 ? SpiceText.Stepped(-1, [(scene.StartSeconds, 1)]) : "DC 1")}");
    }

    private static void WriteStarter(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        text.Part("starter: line contact, and a section for each stage with the contact that shorts it");
        text.Comment("A contact closes when its control passes 0 and stays closed: it would open at twice minus vh only.");
        text.Line($".model contact SW(vt=-1e9 vh=1e9 ron={SpiceText.Number(terms.ClosedOhms)} roff={SpiceText.Number(terms.OpenOhms)})");
        text.Line($"Sline {terms.FeedNode} starter_0 {terms.LineNode} 0 contact OFF");
        for (int i = 0; i < scene.Setup.SectionOhms.Count; i++)
        {
            string ends = $"starter_{i} starter_{i + 1}";
            text.Line($"Rsection_{i + 1} {ends} {SpiceText.Number(scene.Setup.SectionOhms[i])}");
            text.Line($"Sstage_{i + 1} {ends} margin_{i + 1} 0 contact OFF");
        }
    }

    private static void WriteArmature(SpiceText text, Machine machine, int sections, SpiceTerms terms)
    {
        text.Part("armature: inductance, resistance, ammeter, brush drop, back-EMF");
        string node = $"starter_{sections}";
        if (machine.ArmatureHenries > 0)
        {
            text.Line($"Larmature {node} armature_1 {SpiceText.Number(machine.ArmatureHenries)} ic=0");
            node = "armature_1";
        }

        text.Line($"Rarmature {node} armature_2 {SpiceText.Number(machine.ArmatureOhms)}");
        text.Line("Varmature_amps armature_2 armature_3 DC 0");
        node = "armature_3";
        if (machine.BrushDropVolts > 0)
        {
            text.Comment($"The drop has the current's sign. Made smooth: within 0.01 % of its full value above {SpiceTerms.Short(5 * terms.SmallAmps)} A.");
            text.Line($"Bbrushes armature_3 armature_4 V={SpiceText.Number(machine.BrushDropVolts)}*tanh({SpiceTerms.Amps}/{SpiceText.Number(terms.SmallAmps)})");
            node = "armature_4";
        }

        text.Line($"Bback_emf {node} 0 V={terms.Constant}*{SpiceTerms.Speed}");
    }
}
