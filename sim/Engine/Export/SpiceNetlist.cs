using System.Linq;

namespace StarterCtl.Engine.Export;

/// <summary>
/// A start as a netlist for the circuit simulator ngspice: armature, starter, shaft and field as circuits, cutouts decided in the
/// netlist itself.
/// </summary>
public static class SpiceNetlist
{
    /// <summary>Writes the netlist.</summary>
    /// <param name="scene">The start.</param>
    /// <param name="options">How finely it is to be solved; null for tight tolerances.</param>
    public static string Of(SpiceScene scene, SpiceOptions? options = null)
    {
        options ??= new SpiceOptions();
        SpiceText text = new();
        SpiceTerms terms = new(scene);
        Head(text, scene);
        SpiceCircuit.Write(text, scene, terms);
        SpiceField.Write(text, scene, terms);
        SpiceShaft.Write(text, scene, terms);
        SpiceDecisions.Write(text, scene, terms, options);
        SpiceAnalysis.Write(text, scene, options);
        return text.ToString();
    }

    private static void Head(SpiceText text, SpiceScene scene)
    {
        // The first line of a netlist is its title, whatever it says.
        text.Comment(scene.Title);
        text.Comment($"Written by StarterCtl from {scene.CaseName}, SHA-256 {scene.CaseSha256}.");
        text.Comment("Run it: ngspice -b FILE. It prints the figures listed below; written for and tried with ngspice 39.");
        text.Comment("Units: V, A, ohm, H, s. On the shaft 1 V stands for 1 rad/s, 1 A for 1 N m, 1 F for 1 kg m2.");
        text.Comment("Switching is ideal: a stage is cut out at the moment at which its back-EMF has grown enough.");
        foreach (string sentence in scene.LeftOut) text.Comment($"Left out: {sentence}");
        text.Comment("");
        text.Comment("What StarterCtl's own solver gives for the same ideal switching, decided every 20 us:");
        int width = SpiceFigure.Of(scene.Own).Max(figure => figure.Name.Length);
        foreach (SpiceFigure figure in SpiceFigure.Of(scene.Own)) text.Comment($"  {figure.Name.PadRight(width)}  {figure.Own.ToString("G7", System.Globalization.CultureInfo.InvariantCulture)}");
    }
}
