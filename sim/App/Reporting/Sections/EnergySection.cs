using System;
using System.Linq;
using StarterCtl.App.Reporting.Plots;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The energy balance of the whole run.</summary>
internal static class EnergySection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        RunResult result = study.Result;
        page.BeginSection("energy", "Where the energy went");
        page.Paragraph($"Over the run of {Seconds(study.Setup.DurationSeconds)} the supply delivered {Joules(result.SupplyJoules)} at the starter's input terminals.");
        EnergyPart[] parts = EnergyPart.Of(result);
        if (result.SupplyJoules > 0) page.Add(EnergyBar.Draw(parts));
        ReportTable table = new("Energy balance", ["Part", "Energy, J", "Part of the supply's, %"]);
        table.Add("Delivered at the input terminals", result.SupplyJoules, Share(result.SupplyJoules, result.SupplyJoules));
        foreach (EnergyPart part in parts) table.Add($"{part.Letter}  {part.Name}", part.Joules, Share(part.Joules, result.SupplyJoules));
        double remainder = result.SupplyJoules - parts.Sum(part => part.Joules);
        table.Add("Remainder: error of the sums", RoundedRemainder(remainder, result.SupplyJoules), Share(RoundedRemainder(remainder, result.SupplyJoules), result.SupplyJoules));
        page.Table(table);
        page.Note($"The brushes' part of the armature heat is {Joules(result.BrushJoules)}. The supply lost another {Joules(result.SourceJoules)} in its own resistance, before the terminals.");
        WriteRule(page, study);
        TemperaturePart.Write(page, study);
        page.EndSection();
    }

    private static void WriteRule(ReportPage page, StartStudy study)
    {
        if (StudyMachine.FollowsArmature(study))
        {
            WriteFollowingFlux(page, study);
            return;
        }

        double noLoadSpeed = StudyMachine.OnFullSupply(study).AtAmps(0).SpeedRadPerSec;
        double joules = 0.5 * study.Setup.Machine.InertiaKgM2 * noLoadSpeed * noLoadSpeed;
        page.Paragraph($"<strong>A rule worth knowing:</strong> an unloaded machine that is started from rest turns as much energy into heat as into motion, however many stages there are. For this inertia and the no-load speed of {Rpm(noLoadSpeed * 30 / Math.PI)} each is ½ <var>J</var> <var>w</var>² = {Joules(joules)}. More stages only move the heat out of the armature into the resistors and keep the current lower. A load during the start adds to the heat.");
    }

    private static void WriteFollowingFlux(ReportPage page, StartStudy study)
    {
        double speed = study.Result.FinalRpm * Math.PI / 30;
        page.Note($"The rule that an unloaded start turns as much energy into heat as into motion, however many stages there are, holds for constant flux. Here the flux follows the armature current. The energy of motion at the final speed is ½ <var>J</var> <var>w</var>² = {Joules(0.5 * study.Setup.Machine.InertiaKgM2 * speed * speed)}; more stages move heat out of the armature into the resistors here too.");
    }

    private static double Share(double joules, double all) => all > 0 ? joules / all * 100 : 0;

    // Below a part in 10^9 of the sum only the rounding of the machine is left.
    private static double RoundedRemainder(double joules, double all) => Math.Abs(joules) < 1e-9 * Math.Abs(all) ? 0 : joules;
}
