using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>Field circuit and flux.</summary>
internal static class SpiceField
{
    /// <summary>Writes the part; nothing for a machine of constant flux.</summary>
    public static void Write(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        RunSetup setup = scene.Setup;
        if (setup.Field is FieldCircuit field) WriteCircuit(text, setup, field, terms);
        if (setup.Machine.Flux is FluxLaw flux) WriteFlux(text, flux, setup.Field != null);
        else
        {
            text.Part($"flux: constant, k = {terms.Constant} V s/rad; stands as a number where it is needed");
        }
    }

    private static void WriteCircuit(SpiceText text, RunSetup setup, FieldCircuit field, SpiceTerms terms)
    {
        text.Part(field.IsShunt ? "field: a shunt winding across the terminals" : "field: a winding on its own supply");
        string node = terms.FeedNode;
        double standing = setup.Supply.OpenCircuitVolts / (setup.Supply.SourceOhms + field.SharedOhms + field.Ohms);
        if (!field.IsShunt)
        {
            node = "field_supply";
            standing = field.SupplyVolts / field.Ohms;
            text.Element($"Vfield_supply field_supply 0 {SpiceText.Stepped(field.SupplyVolts, setup.Events.Where(happening => happening.FieldSupplyVolts != null).Select(happening => (happening.AtSeconds, happening.FieldSupplyVolts!.Value)))}");
        }

        if (field.HasContactor)
        {
            text.Comment("The field contactor closes with the press of start.");
            text.Line($"Sfield {node} field_1 start 0 contact OFF");
            node = "field_1";
        }
        else text.Comment("The field stands from the beginning.");

        text.Line($"Rfield {node} field_2 {SpiceText.Number(field.Ohms)}");
        if (field.Henries > 0) text.Line($"Lfield field_2 field_3 {SpiceText.Number(field.Henries)} ic={SpiceText.Number(field.HasContactor ? 0 : standing)}");
        text.Line($"Vfield_amps {(field.Henries > 0 ? "field_3" : "field_2")} 0 DC 0");
    }

    private static void WriteFlux(SpiceText text, FluxLaw flux, bool hasField)
    {
        text.Part("flux: machine constant k, V s/rad, over the exciting current, A");
        text.Comment("The curve's own cubic pieces between its points; below 0 the curve is turned about its point at 0.");
        string field = hasField ? $"{SpiceText.Number(flux.FieldShare)}*{SpiceTerms.FieldAmps}" : "0";
        string armature = flux.ArmatureShare != 0 ? $"{SpiceTerms.Signed(flux.ArmatureShare)}*{SpiceTerms.Amps}" : "";
        string reaction = flux.ReactionRatio != 0 ? $"{SpiceTerms.Signed(-flux.ReactionRatio)}*abs({SpiceTerms.Amps})" : "";
        text.Element($"Bexciting exciting 0 V={field}{armature}{reaction}");
        text.Line("Bmagnitude magnitude 0 V=abs(V(exciting))");
        text.Element($"Bcurve curve 0 V={SpiceCurve.Cubics(flux.Curve.Curve, "V(magnitude)")}");
        text.Line($"Bconstant constant 0 V=V(exciting) < 0 ? {SpiceText.Number(2 * flux.Curve.Constants[0])}-V(curve) : V(curve)");
    }
}
