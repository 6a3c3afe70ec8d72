using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>The shaft as a capacitor that the torque charges and the load discharges.</summary>
internal static class SpiceShaft
{
    /// <summary>Writes the part.</summary>
    public static void Write(SpiceText text, SpiceScene scene, SpiceTerms terms)
    {
        RunSetup setup = scene.Setup;
        Load load = setup.Load;
        text.Part("shaft: V(speed) is the speed in rad/s");
        text.Line($"Cinertia speed 0 {SpiceText.Number(setup.Machine.InertiaKgM2)} ic={SpiceText.Number(setup.InitialSpeedRadPerSec)}");
        text.Line($"Bmotor_torque 0 speed I={terms.Constant}*{SpiceTerms.Amps}");
        (double Seconds, double Value)[] steps = [.. setup.Events.Where(happening => happening.LoadTorqueNewtonMetres != null).Select(happening => (happening.AtSeconds, happening.LoadTorqueNewtonMetres!.Value))];
        if (load.ConstantNewtonMetres > 0 || steps.Length > 0)
        {
            double first = steps.LastOrDefault(step => step.Seconds <= 0, (0, load.ConstantNewtonMetres)).Value;
            text.Comment("Constant load torque in N m; it opposes rotation and holds the shaft at rest.");
            text.Comment($"Made smooth: within 0.01 % of its full value above {SpiceTerms.Short(5 * terms.SmallRadPerSec)} rad/s.");
            text.Element($"Vload_torque load_torque 0 {SpiceText.Stepped(first, steps)}");
            text.Line($"Bconstant_load speed 0 I=V(load_torque)*tanh({SpiceTerms.Speed}/{SpiceText.Number(terms.SmallRadPerSec)})");
        }

        if (load.ViscousNewtonMetreSeconds > 0) text.Line($"Rviscous_load speed 0 {SpiceText.Number(1 / load.ViscousNewtonMetreSeconds)}");
        if (load.FanNewtonMetreSecondsSquared > 0) text.Line($"Bfan_load speed 0 I={SpiceText.Number(load.FanNewtonMetreSecondsSquared)}*{SpiceTerms.Speed}*abs({SpiceTerms.Speed})");
        if (load.HoistNewtonMetres != 0) text.Line($"Ihoist_load speed 0 DC {SpiceText.Number(load.HoistNewtonMetres)}");
        if (load.Table is LoadTable table) WriteTable(text, table, terms);
    }

    private static void WriteTable(SpiceText text, LoadTable table, SpiceTerms terms)
    {
        text.Comment("Load torque over speed: the table's own cubic pieces between its points, level behind the last.");
        text.Line($"Btable_speed table_speed 0 V=abs({SpiceTerms.Speed})");
        text.Element($"Btable_torque table_torque 0 V={SpiceCurve.Cubics(table.Curve, "V(table_speed)")}");
        text.Line($"Btable_load speed 0 I=V(table_torque)*tanh({SpiceTerms.Speed}/{SpiceText.Number(terms.SmallRadPerSec)})");
    }
}
