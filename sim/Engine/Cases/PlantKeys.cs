using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Cases;

/// <summary>
/// The keys of the case file that describe the real plant and so may have a tolerance. Plate, design, settings of the controller,
/// limits and events are what it is meant to be, and have none.
/// </summary>
public static class PlantKeys
{
    private static readonly CaseKey[] ByItem = [CaseKeys.StarterSections, CaseKeys.StarterSectionThermalCapacity];

    /// <summary>All of them, in the order of a case file.</summary>
    public static IReadOnlyList<CaseKey> All { get; } =
    [
        CaseKeys.SupplyVoltage, CaseKeys.SupplyResistance, CaseKeys.SupplyCableLength, CaseKeys.SupplyCableTemperature,
        CaseKeys.MotorArmatureResistance, CaseKeys.MotorArmatureInductance, CaseKeys.MotorBrushDrop, CaseKeys.MotorInertia, CaseKeys.MotorConstant,
        CaseKeys.MotorWindingTemperature, CaseKeys.MotorMagnetTemperatureCoefficient, CaseKeys.MotorThermalCapacity, CaseKeys.MotorThermalResistance,
        CaseKeys.LoadInertia, CaseKeys.LoadConstantTorque, CaseKeys.LoadViscousTorque, CaseKeys.LoadFanTorque, CaseKeys.LoadTableTorques,
        CaseKeys.LoadHoistTorque, CaseKeys.LoadSpeed,
        CaseKeys.StarterSections, CaseKeys.StarterSectionThermalCapacity, CaseKeys.StarterSectionCoolingTime, CaseKeys.StarterSectionTemperatureCoefficient,
        CaseKeys.ControlPeriod, CaseKeys.ControlJitter,
        CaseKeys.ContactorsClosingTime, CaseKeys.ContactorsOpeningTime, CaseKeys.ContactorsBounceTime, CaseKeys.ContactorsPickUpVoltage,
        CaseKeys.ContactorsDropOutVoltage, CaseKeys.ContactorsArcVoltage,
        CaseKeys.FieldSupplyVoltage, CaseKeys.FieldResistance, CaseKeys.FieldInductance, CaseKeys.FieldCurveConstants, CaseKeys.FieldCurveEmfs,
        CaseKeys.FieldArmatureReaction, CaseKeys.FieldDischargeTime, CaseKeys.FieldThermalCapacity, CaseKeys.FieldThermalResistance,
        CaseKeys.SeriesFieldResistance, CaseKeys.SeriesFieldInductance, CaseKeys.SeriesFieldTurnsRatio, CaseKeys.BrakeResistance,
        CaseKeys.SensorsCurrentNoise, CaseKeys.SensorsCurrentGain, CaseKeys.SensorsCurrentOffset,
        CaseKeys.SensorsVoltageNoise, CaseKeys.SensorsVoltageGain, CaseKeys.SensorsVoltageOffset,
        CaseKeys.SensorsSpeedNoise, CaseKeys.SensorsSpeedGain, CaseKeys.SensorsSpeedOffset, CaseKeys.SensorsFilterTime,
        CaseKeys.RunAmbientTemperature,
    ];

    /// <summary>True for a list whose values differ each by itself, as parts do.</summary>
    public static bool IsByItem(CaseKey key) => ByItem.Contains(key);

    /// <summary>True for a list whose values all differ by the same factor, as points of one curve do.</summary>
    public static bool IsScaled(CaseKey key) => key.Kind == CaseValueKind.Quantities && !IsByItem(key);

    /// <summary>What a tolerance of this key may look like, for a message.</summary>
    internal static string Allowed(CaseKey key)
    {
        if (key.Kind == CaseValueKind.Quantities) return "\"5 %\" or \"-5 % to +10 %\", with normal or triangular before it or without" + (IsByItem(key) ? ", of every value by itself" : ", of all values together");
        string example = key.Kind == CaseValueKind.Ratio ? key.Example : key.Example.Trim('"');
        string percent = key.Dimension == Dimension.Temperature ? "" : "\"5 %\", \"-5 % to +10 %\", ";
        return $"{percent}\"LOW to HIGH\" or one deviation in the manner of \"{example}\", with normal or triangular before it or without";
    }
}
