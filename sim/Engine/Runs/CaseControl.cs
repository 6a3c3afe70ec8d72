using System;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.Engine.Runs;

/// <summary>How the controller of a case is set.</summary>
internal static class CaseControl
{
    // Common practice, no source: an instantaneous trip half above the permitted peak, feedback within twice the contact's time.
    private const double InstantTripRatio = 1.5;
    private const double ContactTimeRatio = 2;

    // Beyond the instantaneous trip as far as a current can rise before the line is open.
    private const double CurveRatio = 1.5;
    private const double LeastContactSeconds = 0.1;

    // Common practice, no source.
    private const double SeriesOverspeedRatio = 2;

    /// <summary>Reads everything that sets the controller beside the design.</summary>
    /// <param name="file">The case.</param>
    /// <param name="design">Its starter.</param>
    /// <param name="contactors">Its contactors.</param>
    /// <param name="machine">Its machine.</param>
    /// <exception cref="CaseException">Two keys contradict each other.</exception>
    public static ControlSetup Of(CaseFile file, StarterDesign design, Contactors contactors, CaseMachine machine)
    {
        double lockout = file.Number(CaseKeys.ControlLockoutCurrent);
        double contactSeconds = file.Has(CaseKeys.ControlContactTime)
            ? file.Number(CaseKeys.ControlContactTime)
            : Math.Max(LeastContactSeconds, ContactTimeRatio * Math.Max(contactors.ReportedSeconds, contactors.OpeningSeconds));
        double instantTripAmps = Optional(file, CaseKeys.ControlInstantTrip) ?? InstantTripRatio * design.WorstPeakAmps;
        return new ControlSetup
        {
            PeriodMicroseconds = Time(file, CaseKeys.ControlPeriod),
            ConfirmMicroseconds = Time(file, CaseKeys.ControlConfirmTime),
            MinimumDwellMicroseconds = Time(file, CaseKeys.ControlMinimumDwell),
            MaximumStageMicroseconds = Time(file, CaseKeys.ControlMaximumStageTime),
            ContactMicroseconds = Microseconds(contactSeconds),
            LockoutAmps = double.IsFinite(lockout) ? lockout : null,
            InstantTripAmps = instantTripAmps,
            SpinningStart = file.IsYes(CaseKeys.ControlSpinningStart),
            Field = machine.Field == null ? null : FieldOf(file, machine.Field),
            Flux = ControllerCurve.Of(machine, file.IsYes(CaseKeys.SensorsFieldCurrent), design.PeakAmps, CurveRatio * instantTripAmps),
            Brake = file.HasAnyOf("brake") ? BrakeOf(file) : null,
            Sensors = SensorsOf(file),
            Protections = ProtectionsOf(file, machine.Kind),
        };
    }

    private static FieldControl FieldOf(CaseFile file, FieldCircuit field) => new()
    {
        HasContactor = field.HasContactor,
        // One that is asked for by name without a contactor is left for the controller's own check to refuse.
        HasContact = file.IsYes(CaseKeys.SensorsFieldContact) && (field.HasContactor || file.Has(CaseKeys.SensorsFieldContact)),
        IsMeasured = file.IsYes(CaseKeys.SensorsFieldCurrent),
        MinimumAmps = Optional(file, CaseKeys.FieldMinimumCurrent) ?? 0,
        BuildMicroseconds = Time(file, CaseKeys.FieldBuildTime),
        MaximumMicroseconds = Time(file, CaseKeys.FieldMaximumTime),
    };

    private static BrakeControl BrakeOf(CaseFile file) => new()
    {
        ResistorOhms = Optional(file, CaseKeys.BrakeResistance) ?? 0,
        ReleaseRadPerSec = Optional(file, CaseKeys.BrakeReleaseSpeed) ?? 0,
        DelayMicroseconds = Time(file, CaseKeys.BrakeDelay),
        MaximumMicroseconds = Time(file, CaseKeys.BrakeMaximumTime),
        HasContact = file.IsYes(CaseKeys.SensorsBrakeContact),
    };

    private static SensorSetup SensorsOf(CaseFile file) => new()
    {
        HasSpeed = file.IsYes(CaseKeys.SensorsSpeed),
        SpeedLoss = file.Text(CaseKeys.SensorsSpeedLoss) switch
        {
            "keep running" => SpeedLossAction.KeepRunning,
            "finish start" => SpeedLossAction.FinishStart,
            _ => SpeedLossAction.Trip,
        },
        SpeedLossMicroseconds = Time(file, CaseKeys.SensorsSpeedLossTime),
        ResistiveConfirmMicroseconds = file.Has(CaseKeys.SensorsResistiveConfirmTime) ? Time(file, CaseKeys.SensorsResistiveConfirmTime) : null,
        StandstillRadPerSec = Optional(file, CaseKeys.SensorsStandstillSpeed),
        ZeroAmps = Optional(file, CaseKeys.SensorsZeroCurrent) ?? 0,
        StepToleranceRatio = Optional(file, CaseKeys.SensorsStepTolerance) ?? 0,
        StepSettleMicroseconds = Time(file, CaseKeys.SensorsStepSettleTime),
        HasLineContact = file.IsYes(CaseKeys.SensorsLineContact),
        HasStageContacts = file.IsYes(CaseKeys.SensorsStageContacts),
    };

    // A series motor that loses its load runs away: it is never left without this limit where a rated speed is known.
    private static double? UsualOverspeed(CaseFile file, MachineKind kind) =>
        kind == MachineKind.Series ? SeriesOverspeedRatio * Optional(file, CaseKeys.MotorRatedSpeed) : null;

    private static ProtectionSetup ProtectionsOf(CaseFile file, MachineKind kind) => new()
    {
        TripConfirmMicroseconds = Time(file, CaseKeys.ProtectionTripConfirmTime),
        SupplyLowVolts = Optional(file, CaseKeys.ProtectionSupplyLow),
        DipMicroseconds = Time(file, CaseKeys.ProtectionDipTime),
        DipAction = file.Text(CaseKeys.ProtectionDipAction) == "put resistance back" ? DipAction.PutResistanceBack : DipAction.LeaveStages,
        SupplyHighVolts = Optional(file, CaseKeys.ProtectionSupplyHigh),
        SupplyHighMicroseconds = Time(file, CaseKeys.ProtectionSupplyHighTime),
        OverloadAmps = Optional(file, CaseKeys.ProtectionOverloadCurrent),
        OverloadSeconds = TripClass.Named(file.Text(CaseKeys.ProtectionOverloadClass)).Seconds,
        OverloadResetRatio = file.Number(CaseKeys.ProtectionOverloadReset),
        ResistorJoules = Optional(file, CaseKeys.ProtectionResistorEnergy),
        ResistorSeconds = file.Number(CaseKeys.ProtectionResistorTimeConstant),
        ResistorStartRatio = file.Number(CaseKeys.ProtectionResistorStartLevel),
        ResistorCelsius = Optional(file, CaseKeys.ProtectionResistorTemperature),
        StartsPerHour = file.Has(CaseKeys.ProtectionStartsPerHour) ? file.Count(CaseKeys.ProtectionStartsPerHour) : 0,
        MaximumStartMicroseconds = OptionalTime(file, CaseKeys.ProtectionMaximumStartTime),
        StallAmps = Optional(file, CaseKeys.ProtectionStallCurrent),
        StallMicroseconds = Time(file, CaseKeys.ProtectionStallTime),
        OverspeedRadPerSec = Optional(file, CaseKeys.ProtectionOverspeed) ?? UsualOverspeed(file, kind),
        ReverseRadPerSec = Optional(file, CaseKeys.ProtectionReverseSpeed),
        DisagreementVolts = Optional(file, CaseKeys.ProtectionDisagreement),
        DisagreementMicroseconds = Time(file, CaseKeys.ProtectionDisagreementTime),
        MaximumTickMicroseconds = OptionalTime(file, CaseKeys.ProtectionMaximumTick),
        Permissives = file.Has(CaseKeys.ProtectionPermissives) ? file.Count(CaseKeys.ProtectionPermissives) : 0,
    };

    private static double? Optional(CaseFile file, CaseKey key) => file.Has(key) ? file.Number(key) : null;

    private static int? OptionalTime(CaseFile file, CaseKey key) => file.Has(key) ? Time(file, key) : null;

    private static int Time(CaseFile file, CaseKey key) => Microseconds(file.Number(key));

    /// <summary>A time as the controller counts it, us. A contact time shorter than a microsecond would be none.</summary>
    public static int Microseconds(double seconds) => (int)Math.Ceiling(Math.Round(seconds * 1e6, 3));
}
