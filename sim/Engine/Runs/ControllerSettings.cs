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

    // Common practice, no source.
    private const double StandstillRatio = 0.01;

    /// <summary>Fills the controller's settings.</summary>
    /// <param name="design">Sections and thresholds.</param>
    /// <param name="machine">Machine constant, brush drop and inductance.</param>
    /// <param name="control">Everything else. Protections that it leaves open stay off.</param>
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
            HighestSpeedRadPerSec = (float)(PlausibleFactor * design.SupplyVolts / WeakestConstant(machine, control.Flux)),
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
        settings.SpinningStart = control.SpinningStart;
        settings.NominalSupplyVolts = (float)design.SupplyVolts;
        SetField(settings, control.Field);
        SetFlux(settings, control.Flux);
        SetBrake(settings, control.Brake, machine.ArmatureOhms);
        SetSensors(settings, control.Sensors, design.SupplyVolts / machine.Constant);
        SetSupplyLimits(settings, control.Protections);
        SetHeatLimits(settings, control.Protections);
        SetMotionLimits(settings, control.Protections);
        return settings;
    }

    private static void SetField(Settings settings, FieldControl? field)
    {
        if (field == null) return;
        settings.FieldContactorFitted = field.HasContactor;
        settings.FieldContactFitted = field.HasContact;
        settings.FieldSensorFitted = field.IsMeasured;
        settings.MinimumFieldAmps = (float)field.MinimumAmps;
        settings.FieldBuildMicroseconds = field.BuildMicroseconds;
        settings.MaximumFieldMicroseconds = field.MaximumMicroseconds;
    }

    private static void SetFlux(Settings settings, FluxSetup? flux)
    {
        if (flux == null) return;
        settings.FluxSource = flux.Source;
        settings.ReactionRatio = (float)flux.ReactionRatio;
        settings.CurvePoints = flux.Amps.Count;
        for (int i = 0; i < settings.CurvePoints; i++)
        {
            settings.CurveAmps[i] = (float)flux.Amps[i];
            settings.CurveConstants[i] = (float)flux.Constants[i];
        }
    }

    private static void SetBrake(Settings settings, BrakeControl? brake, double armatureOhms)
    {
        if (brake == null) return;
        settings.BrakeFitted = true;
        settings.BrakeContactFitted = brake.HasContact;
        settings.BrakeOhms = brake.ResistorOhms > 0 ? (float)(armatureOhms + brake.ResistorOhms) : 0f;
        settings.BrakeReleaseRadPerSec = (float)brake.ReleaseRadPerSec;
        settings.BrakeDelayMicroseconds = brake.DelayMicroseconds;
        settings.MaximumBrakeMicroseconds = brake.MaximumMicroseconds;
    }

    private static void SetSensors(Settings settings, SensorSetup sensors, double noLoadRadPerSec)
    {
        settings.SpeedSensorFitted = sensors.HasSpeed;
        settings.SpeedLoss = sensors.SpeedLoss;
        settings.SpeedLossMicroseconds = sensors.SpeedLossMicroseconds;
        settings.ResistiveConfirmMicroseconds = sensors.ResistiveConfirmMicroseconds
            ?? Math.Max(settings.ResistiveConfirmMicroseconds, settings.ConfirmMicroseconds);
        settings.StandstillRadPerSec = (float)(sensors.StandstillRadPerSec ?? Math.Min(StandstillRatio * noLoadRadPerSec, Settings.Largest));
        settings.ZeroAmps = (float)sensors.ZeroAmps;
        settings.StepToleranceRatio = (float)sensors.StepToleranceRatio;
        settings.StepSettleMicroseconds = sensors.StepSettleMicroseconds;
        settings.LineContactFitted = sensors.HasLineContact;
        settings.StageContactsFitted = sensors.HasStageContacts;
    }

    private static void SetSupplyLimits(Settings settings, ProtectionSetup protections)
    {
        settings.SupplyLowVolts = (float)(protections.SupplyLowVolts ?? 0);
        settings.DipAction = protections.DipAction;
        settings.DipMicroseconds = protections.DipMicroseconds;
        settings.SupplyHighVolts = OrOff(protections.SupplyHighVolts);
        settings.SupplyHighMicroseconds = protections.SupplyHighMicroseconds;
        settings.MaximumTickMicroseconds = protections.MaximumTickMicroseconds ?? Settings.LongestMicroseconds;
        settings.RequiredPermissives = (1 << protections.Permissives) - 1;
    }

    private static void SetHeatLimits(Settings settings, ProtectionSetup protections)
    {
        settings.OverloadAmps = (float)(protections.OverloadAmps ?? 0);
        settings.OverloadSeconds = (float)protections.OverloadSeconds;
        settings.OverloadResetRatio = (float)protections.OverloadResetRatio;
        settings.ResistorJoules = (float)(protections.ResistorJoules ?? 0);
        settings.ResistorSeconds = (float)protections.ResistorSeconds;
        settings.ResistorStartRatio = (float)protections.ResistorStartRatio;
        settings.ResistorSensorFitted = protections.ResistorCelsius != null;
        settings.ResistorCelsius = (float)(protections.ResistorCelsius ?? settings.ResistorCelsius);
        settings.StartsPerHour = protections.StartsPerHour;
    }

    private static void SetMotionLimits(Settings settings, ProtectionSetup protections)
    {
        settings.TripConfirmMicroseconds = protections.TripConfirmMicroseconds;
        settings.MaximumStartMicroseconds = protections.MaximumStartMicroseconds ?? Settings.LongestMicroseconds;
        settings.StallAmps = OrOff(protections.StallAmps);
        settings.StallMicroseconds = protections.StallMicroseconds;
        settings.OverspeedRadPerSec = OrOff(protections.OverspeedRadPerSec);
        settings.ReverseRadPerSec = OrOff(protections.ReverseRadPerSec);
        settings.DisagreementVolts = OrOff(protections.DisagreementVolts);
        settings.DisagreementMicroseconds = protections.DisagreementMicroseconds;
    }

    // A machine with a series winding turns fastest without load, where that winding gives nothing.
    private static double WeakestConstant(Machine machine, FluxSetup? flux) => Math.Min(machine.Constant, flux?.UnloadedConstant ?? machine.Constant);

    private static float OrOff(double? limit) => (float)(limit ?? Settings.Largest);

    // The slope at which the inductance takes 1 % of the supply and the resistive estimate is off by as much.
    private static double SteadyAmpsPerSec(StarterDesign design, Machine machine) =>
        machine.ArmatureHenries > 0
            ? Math.Min(0.01 * design.SupplyVolts / machine.ArmatureHenries, Settings.Largest)
            : Settings.Largest;
}
