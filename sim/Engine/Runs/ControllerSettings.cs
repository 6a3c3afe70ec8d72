using System;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>From a design to what the controller holds.</summary>
public static class ControllerSettings
{
    // Readings are believed up to twice what the design expects.
    private const double PlausibleFactor = 2;

    /// <summary>Fills the controller's settings.</summary>
    /// <param name="design">Sections and thresholds.</param>
    /// <param name="machine">Machine constant, brush drop and inductance.</param>
    /// <param name="control">Times and currents of the control.</param>
    public static Settings From(StarterDesign design, Machine machine, ControlSetup control)
    {
        Settings settings = new()
        {
            StageCount = design.StageCount,
            MachineConstant = (float)machine.Constant,
            BrushDropVolts = (float)machine.BrushDropVolts,
            LockoutAmps = (float)(control.LockoutAmps ?? Settings.Largest),
            PeakAmps = (float)design.PeakAmps,
            InstantTripAmps = (float)control.InstantTripAmps,
            HighestSupplyVolts = (float)(PlausibleFactor * design.SupplyVolts),
            HighestSpeedRadPerSec = (float)(PlausibleFactor * design.SupplyVolts / machine.Constant),
            SteadyAmpsPerSec = (float)SteadyAmpsPerSec(design, machine),
            ConfirmMicroseconds = control.ConfirmMicroseconds,
            MinimumDwellMicroseconds = control.MinimumDwellMicroseconds,
            MaximumStageMicroseconds = control.MaximumStageMicroseconds,
            ContactMicroseconds = control.ContactMicroseconds,
        };
        for (int i = 0; i < design.StageCount; i++)
        {
            settings.StageOhms[i] = (float)design.Stages[i].TotalOhms;
            settings.VoltsLeft[i] = (float)design.Stages[i].VoltsLeft;
        }

        settings.StageOhms[design.StageCount] = (float)design.ArmatureOhms;
        return settings;
    }

    // The slope at which the inductance takes 1 % of the supply and the resistive estimate is off by as much.
    private static double SteadyAmpsPerSec(StarterDesign design, Machine machine) =>
        machine.ArmatureHenries > 0
            ? Math.Min(0.01 * design.SupplyVolts / machine.ArmatureHenries, Settings.Largest)
            : Settings.Largest;
}
