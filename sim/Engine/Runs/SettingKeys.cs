using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Runs;

/// <summary>Which key of a case a setting of the controller comes from.</summary>
public static class SettingKeys
{
    // A setting that several keys make is blamed on the one that is most likely wrong.
    private static readonly Dictionary<SettingId, CaseKey> Keys = new()
    {
        [SettingId.StageCount] = CaseKeys.StarterStages,
        [SettingId.StageOhms] = CaseKeys.StarterSections,
        [SettingId.VoltsLeft] = CaseKeys.StarterPeakCurrent,
        [SettingId.MachineConstant] = CaseKeys.MotorConstant,
        [SettingId.BrushDropVolts] = CaseKeys.MotorBrushDrop,
        [SettingId.LockoutAmps] = CaseKeys.ControlLockoutCurrent,
        [SettingId.InstantTripAmps] = CaseKeys.ControlInstantTrip,
        [SettingId.HighestSupplyVolts] = CaseKeys.SupplyVoltage,
        [SettingId.HighestSpeedRadPerSec] = CaseKeys.MotorConstant,
        [SettingId.SteadyAmpsPerSec] = CaseKeys.MotorArmatureInductance,
        [SettingId.ConfirmMicroseconds] = CaseKeys.ControlConfirmTime,
        [SettingId.MinimumDwellMicroseconds] = CaseKeys.ControlMinimumDwell,
        [SettingId.MaximumStageMicroseconds] = CaseKeys.ControlMaximumStageTime,
        [SettingId.ContactMicroseconds] = CaseKeys.ControlContactTime,
        [SettingId.FluxSource] = CaseKeys.FieldSupplyVoltage,
        [SettingId.CurvePoints] = CaseKeys.FieldCurveCurrents,
        [SettingId.CurveAmps] = CaseKeys.FieldCurveCurrents,
        [SettingId.CurveConstants] = CaseKeys.FieldCurveConstants,
        [SettingId.ReactionRatio] = CaseKeys.FieldArmatureReaction,
        [SettingId.PeakAmps] = CaseKeys.StarterPeakCurrent,
        [SettingId.LineContactFitted] = CaseKeys.SensorsLineContact,
        [SettingId.StageContactsFitted] = CaseKeys.SensorsStageContacts,
        [SettingId.StepToleranceRatio] = CaseKeys.SensorsStepTolerance,
        [SettingId.StepSettleMicroseconds] = CaseKeys.SensorsStepSettleTime,
        [SettingId.ZeroAmps] = CaseKeys.SensorsZeroCurrent,
        [SettingId.SpeedSensorFitted] = CaseKeys.SensorsSpeed,
        [SettingId.SpeedLoss] = CaseKeys.SensorsSpeedLoss,
        [SettingId.SpeedLossMicroseconds] = CaseKeys.SensorsSpeedLossTime,
        [SettingId.ResistiveConfirmMicroseconds] = CaseKeys.SensorsResistiveConfirmTime,
        [SettingId.StandstillRadPerSec] = CaseKeys.SensorsStandstillSpeed,
        [SettingId.SpinningStart] = CaseKeys.ControlSpinningStart,
        [SettingId.FieldContactorFitted] = CaseKeys.FieldContactor,
        [SettingId.FieldContactFitted] = CaseKeys.SensorsFieldContact,
        [SettingId.FieldSensorFitted] = CaseKeys.SensorsFieldCurrent,
        [SettingId.MinimumFieldAmps] = CaseKeys.FieldMinimumCurrent,
        [SettingId.FieldBuildMicroseconds] = CaseKeys.FieldBuildTime,
        [SettingId.MaximumFieldMicroseconds] = CaseKeys.FieldMaximumTime,
        [SettingId.TripConfirmMicroseconds] = CaseKeys.ProtectionTripConfirmTime,
        [SettingId.SupplyLowVolts] = CaseKeys.ProtectionSupplyLow,
        [SettingId.NominalSupplyVolts] = CaseKeys.SupplyVoltage,
        [SettingId.DipAction] = CaseKeys.ProtectionDipAction,
        [SettingId.DipMicroseconds] = CaseKeys.ProtectionDipTime,
        [SettingId.SupplyHighVolts] = CaseKeys.ProtectionSupplyHigh,
        [SettingId.SupplyHighMicroseconds] = CaseKeys.ProtectionSupplyHighTime,
        [SettingId.OverloadAmps] = CaseKeys.ProtectionOverloadCurrent,
        [SettingId.OverloadSeconds] = CaseKeys.ProtectionOverloadClass,
        [SettingId.OverloadResetRatio] = CaseKeys.ProtectionOverloadReset,
        [SettingId.ResistorJoules] = CaseKeys.ProtectionResistorEnergy,
        [SettingId.ResistorSeconds] = CaseKeys.ProtectionResistorTimeConstant,
        [SettingId.ResistorStartRatio] = CaseKeys.ProtectionResistorStartLevel,
        [SettingId.ResistorSensorFitted] = CaseKeys.ProtectionResistorTemperature,
        [SettingId.ResistorCelsius] = CaseKeys.ProtectionResistorTemperature,
        [SettingId.StartsPerHour] = CaseKeys.ProtectionStartsPerHour,
        [SettingId.StallAmps] = CaseKeys.ProtectionStallCurrent,
        [SettingId.StallMicroseconds] = CaseKeys.ProtectionStallTime,
        [SettingId.MaximumStartMicroseconds] = CaseKeys.ProtectionMaximumStartTime,
        [SettingId.OverspeedRadPerSec] = CaseKeys.ProtectionOverspeed,
        [SettingId.ReverseRadPerSec] = CaseKeys.ProtectionReverseSpeed,
        [SettingId.DisagreementVolts] = CaseKeys.ProtectionDisagreement,
        [SettingId.DisagreementMicroseconds] = CaseKeys.ProtectionDisagreementTime,
        [SettingId.MaximumTickMicroseconds] = CaseKeys.ProtectionMaximumTick,
        [SettingId.RequiredPermissives] = CaseKeys.ProtectionPermissives,
        [SettingId.BrakeFitted] = CaseKeys.BrakeResistance,
        [SettingId.BrakeContactFitted] = CaseKeys.SensorsBrakeContact,
        [SettingId.BrakeOhms] = CaseKeys.BrakeResistance,
        [SettingId.BrakeReleaseRadPerSec] = CaseKeys.BrakeReleaseSpeed,
        [SettingId.BrakeDelayMicroseconds] = CaseKeys.BrakeDelay,
        [SettingId.MaximumBrakeMicroseconds] = CaseKeys.BrakeMaximumTime,
    };

    /// <summary>The key that a setting comes from.</summary>
    public static CaseKey Of(SettingId id) => Keys[id];
}
