using System.Collections.Generic;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// Every key of the case file. Names are a contract with the users' files: keys are added, never renamed.
/// This part lists them; the other parts define them.
/// </summary>
public static partial class CaseKeys
{
    /// <summary>All keys in the order of a case file.</summary>
    public static IReadOnlyList<CaseKey> All => Order.Keys;

    // A class of its own, so that the list is made after the keys, whichever part of this class comes first.
    private static class Order
    {
        internal static readonly CaseKey[] Keys =
        [
            Title, SupplyVoltage, SupplyResistance, SupplyCableLength, SupplyCableArea, SupplyCableMaterial, SupplyCableTemperature,
            SupplyPermittedDip, MotorKind, MotorRatedPower, MotorRatedVoltage, MotorRatedCurrent,
            MotorRatedSpeed, MotorEfficiency, MotorArmatureResistance, MotorArmatureInductance, MotorBrushDrop,
            MotorInertia, MotorConstant, MotorPoles, MotorConductors, MotorParallelPaths, MotorFluxPerPole,
            MotorResistanceTemperature, MotorWindingTemperature, MotorMagnetTemperatureCoefficient,
            MotorThermalCapacity, MotorThermalResistance, MotorWindingTemperatureLimit,
            LoadInertia, LoadConstantTorque, LoadViscousTorque, LoadFanTorque, LoadTableSpeeds, LoadTableTorques, LoadHoistTorque, LoadSpeed, StarterPeakCurrent,
            StarterSwitchingCurrent, StarterStages, StarterSlack, StarterSections, StarterCutoutVoltages,
            StarterSectionThermalCapacity, StarterSectionCoolingTime, StarterSectionTemperatureCoefficient,
            StarterSectionHotSpotLimit, StarterSectionHotSpotFactor,
            ControlPeriod, ControlJitter, ControlConfirmTime, ControlMinimumDwell, ControlMaximumStageTime, ControlLockoutCurrent,
            ControlInstantTrip, ControlContactTime, ControlSpinningStart, ContactorsClosingTime, ContactorsOpeningTime,
            ContactorsBounceCount, ContactorsBounceTime, ContactorsPickUpVoltage, ContactorsDropOutVoltage, ContactorsArcVoltage,
            ContactorsRatedCurrent, DutyRunTime, DutyRest, DutyStartsPerHour,
            FieldSupplyVoltage, FieldResistance, FieldInductance, FieldRatedCurrent,
            FieldCurveCurrents, FieldCurveConstants, FieldCurveEmfs, FieldCurveSpeed, FieldArmatureReaction,
            FieldDischargeTime, FieldContactor, FieldMinimumCurrent, FieldBuildTime, FieldMaximumTime,
            FieldThermalCapacity, FieldThermalResistance,
            SeriesFieldResistance, SeriesFieldInductance, SeriesFieldTurnsRatio, SeriesFieldConnection, SeriesFieldSense,
            BrakeResistance, BrakeReleaseSpeed, BrakeDelay, BrakeMaximumTime,
            SensorsSpeed, SensorsSpeedLoss, SensorsSpeedLossTime, SensorsResistiveConfirmTime, SensorsStandstillSpeed,
            SensorsZeroCurrent, SensorsStepTolerance, SensorsStepSettleTime, SensorsLineContact, SensorsStageContacts,
            SensorsBrakeContact, SensorsFieldContact, SensorsFieldCurrent,
            SensorsCurrentNoise, SensorsCurrentGain, SensorsCurrentOffset, SensorsCurrentRange, SensorsVoltageNoise,
            SensorsVoltageGain, SensorsVoltageOffset, SensorsVoltageRange, SensorsSpeedNoise, SensorsSpeedGain,
            SensorsSpeedOffset, SensorsSpeedRange, SensorsBits, SensorsFilterTime, SensorsSeed,
            SensorsPulsesPerRevolution, SensorsPulseTimeout,
            ProtectionTripConfirmTime, ProtectionSupplyLow,
            ProtectionDipTime, ProtectionDipAction, ProtectionSupplyHigh, ProtectionSupplyHighTime,
            ProtectionOverloadCurrent, ProtectionOverloadClass, ProtectionOverloadReset, ProtectionResistorEnergy,
            ProtectionResistorTimeConstant, ProtectionResistorStartLevel, ProtectionResistorTemperature,
            ProtectionStartsPerHour, ProtectionMaximumStartTime, ProtectionStallCurrent, ProtectionStallTime,
            ProtectionOverspeed, ProtectionReverseSpeed, ProtectionDisagreement, ProtectionDisagreementTime,
            ProtectionMaximumTick, ProtectionPermissives, RunDuration, RunRecordPeriod, RunAmbientTemperature, LimitsPeakCurrent,
            LimitsPeakTorque, LimitsStartTime, ExpectFault, ExpectBy, ExpectPhase, EventAt,
            EventWhenSpeedAbove, EventWhenSpeedBelow, EventWhenStage, EventAfter, EventLoadTorque,
            EventSupplyVoltage, EventHoistTorque, EventOver, EventLoadInertia, EventFieldSupplyVoltage, EventField, EventSpeedSignal, EventShaft, EventContact,
            EventContactFault, EventCoilVoltage, EventPermissives, EventCurrentGain, EventMissingPulses, EventExtraPulses, EventResistorTemperature,
            EventSensor, EventSensorFault, EventAmbientTemperature, EventCooling, EventCommand,
        ];
    }
}
