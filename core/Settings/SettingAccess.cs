namespace StarterCtl.Core;

/// <summary>Reads and writes a setting by its id, for everything that goes by the table.</summary>
public static class SettingAccess
{
    /// <summary>How many values a setting has in a set: more than one for the numbers of the stages.</summary>
    /// <returns>0 where the array that should hold them is missing or too short.</returns>
    public static int Count(Settings settings, SettingId id)
    {
        int stages = settings.StageCount < 1 ? 0 : settings.StageCount > Settings.MostStages ? Settings.MostStages : settings.StageCount;
        switch (id)
        {
            case SettingId.StageOhms:
                return settings.StageOhms == null || settings.StageOhms.Length <= stages ? 0 : stages + 1;
            case SettingId.VoltsLeft:
                return settings.VoltsLeft == null || settings.VoltsLeft.Length < stages ? 0 : stages;
            case SettingId.CurveAmps:
                return CurveCount(settings, settings.CurveAmps);
            case SettingId.CurveConstants:
                return CurveCount(settings, settings.CurveConstants);
            case SettingId.None:
                return 0;
            default:
                return 1;
        }
    }

    /// <summary>True where a set rightly holds no value of a setting: a curve without points.</summary>
    public static bool MayBeEmpty(Settings settings, SettingId id) =>
        settings.CurvePoints == 0 && (id == SettingId.CurveAmps || id == SettingId.CurveConstants);

    /// <summary>A number. Whole ones come through rounded to single precision: use <see cref="GetWhole"/>.</summary>
    /// <param name="settings">The set.</param>
    /// <param name="id">Which.</param>
    /// <param name="index">0 to its count - 1.</param>
    public static float Get(Settings settings, SettingId id, int index)
    {
        switch (id)
        {
            case SettingId.StageOhms: return settings.StageOhms[index];
            case SettingId.VoltsLeft: return settings.VoltsLeft[index];
            case SettingId.MachineConstant: return settings.MachineConstant;
            case SettingId.BrushDropVolts: return settings.BrushDropVolts;
            case SettingId.LockoutAmps: return settings.LockoutAmps;
            case SettingId.InstantTripAmps: return settings.InstantTripAmps;
            case SettingId.HighestSupplyVolts: return settings.HighestSupplyVolts;
            case SettingId.HighestSpeedRadPerSec: return settings.HighestSpeedRadPerSec;
            case SettingId.SteadyAmpsPerSec: return settings.SteadyAmpsPerSec;
            case SettingId.CurveAmps: return settings.CurveAmps[index];
            case SettingId.CurveConstants: return settings.CurveConstants[index];
            case SettingId.ReactionRatio: return settings.ReactionRatio;
            case SettingId.PeakAmps: return settings.PeakAmps;
            case SettingId.StepToleranceRatio: return settings.StepToleranceRatio;
            case SettingId.ZeroAmps: return settings.ZeroAmps;
            case SettingId.StandstillRadPerSec: return settings.StandstillRadPerSec;
            case SettingId.MinimumFieldAmps: return settings.MinimumFieldAmps;
            case SettingId.SupplyLowVolts: return settings.SupplyLowVolts;
            case SettingId.NominalSupplyVolts: return settings.NominalSupplyVolts;
            case SettingId.SupplyHighVolts: return settings.SupplyHighVolts;
            case SettingId.OverloadAmps: return settings.OverloadAmps;
            case SettingId.OverloadSeconds: return settings.OverloadSeconds;
            case SettingId.OverloadResetRatio: return settings.OverloadResetRatio;
            case SettingId.ResistorJoules: return settings.ResistorJoules;
            case SettingId.ResistorSeconds: return settings.ResistorSeconds;
            case SettingId.ResistorStartRatio: return settings.ResistorStartRatio;
            case SettingId.ResistorCelsius: return settings.ResistorCelsius;
            case SettingId.StallAmps: return settings.StallAmps;
            case SettingId.OverspeedRadPerSec: return settings.OverspeedRadPerSec;
            case SettingId.ReverseRadPerSec: return settings.ReverseRadPerSec;
            case SettingId.DisagreementVolts: return settings.DisagreementVolts;
            case SettingId.BrakeOhms: return settings.BrakeOhms;
            case SettingId.BrakeReleaseRadPerSec: return settings.BrakeReleaseRadPerSec;
            default: return GetWhole(settings, id);
        }
    }

    /// <summary>Writes a number; one that the set does not have is left alone.</summary>
    public static void Set(Settings settings, SettingId id, int index, float number)
    {
        switch (id)
        {
            case SettingId.StageOhms: settings.StageOhms[index] = number; break;
            case SettingId.VoltsLeft: settings.VoltsLeft[index] = number; break;
            case SettingId.MachineConstant: settings.MachineConstant = number; break;
            case SettingId.BrushDropVolts: settings.BrushDropVolts = number; break;
            case SettingId.LockoutAmps: settings.LockoutAmps = number; break;
            case SettingId.InstantTripAmps: settings.InstantTripAmps = number; break;
            case SettingId.HighestSupplyVolts: settings.HighestSupplyVolts = number; break;
            case SettingId.HighestSpeedRadPerSec: settings.HighestSpeedRadPerSec = number; break;
            case SettingId.SteadyAmpsPerSec: settings.SteadyAmpsPerSec = number; break;
            case SettingId.CurveAmps: settings.CurveAmps[index] = number; break;
            case SettingId.CurveConstants: settings.CurveConstants[index] = number; break;
            case SettingId.ReactionRatio: settings.ReactionRatio = number; break;
            case SettingId.PeakAmps: settings.PeakAmps = number; break;
            case SettingId.StepToleranceRatio: settings.StepToleranceRatio = number; break;
            case SettingId.ZeroAmps: settings.ZeroAmps = number; break;
            case SettingId.StandstillRadPerSec: settings.StandstillRadPerSec = number; break;
            case SettingId.MinimumFieldAmps: settings.MinimumFieldAmps = number; break;
            case SettingId.SupplyLowVolts: settings.SupplyLowVolts = number; break;
            case SettingId.NominalSupplyVolts: settings.NominalSupplyVolts = number; break;
            case SettingId.SupplyHighVolts: settings.SupplyHighVolts = number; break;
            case SettingId.OverloadAmps: settings.OverloadAmps = number; break;
            case SettingId.OverloadSeconds: settings.OverloadSeconds = number; break;
            case SettingId.OverloadResetRatio: settings.OverloadResetRatio = number; break;
            case SettingId.ResistorJoules: settings.ResistorJoules = number; break;
            case SettingId.ResistorSeconds: settings.ResistorSeconds = number; break;
            case SettingId.ResistorStartRatio: settings.ResistorStartRatio = number; break;
            case SettingId.ResistorCelsius: settings.ResistorCelsius = number; break;
            case SettingId.StallAmps: settings.StallAmps = number; break;
            case SettingId.OverspeedRadPerSec: settings.OverspeedRadPerSec = number; break;
            case SettingId.ReverseRadPerSec: settings.ReverseRadPerSec = number; break;
            case SettingId.DisagreementVolts: settings.DisagreementVolts = number; break;
            case SettingId.BrakeOhms: settings.BrakeOhms = number; break;
            case SettingId.BrakeReleaseRadPerSec: settings.BrakeReleaseRadPerSec = number; break;
        }
    }

    /// <summary>A whole number; 0 for a setting that is none.</summary>
    public static int GetWhole(Settings settings, SettingId id)
    {
        switch (id)
        {
            case SettingId.StageCount: return settings.StageCount;
            case SettingId.ConfirmMicroseconds: return settings.ConfirmMicroseconds;
            case SettingId.MinimumDwellMicroseconds: return settings.MinimumDwellMicroseconds;
            case SettingId.MaximumStageMicroseconds: return settings.MaximumStageMicroseconds;
            case SettingId.ContactMicroseconds: return settings.ContactMicroseconds;
            case SettingId.FluxSource: return (int)settings.FluxSource;
            case SettingId.CurvePoints: return settings.CurvePoints;
            case SettingId.LineContactFitted: return settings.LineContactFitted ? 1 : 0;
            case SettingId.StageContactsFitted: return settings.StageContactsFitted ? 1 : 0;
            case SettingId.StepSettleMicroseconds: return settings.StepSettleMicroseconds;
            case SettingId.SpeedSensorFitted: return settings.SpeedSensorFitted ? 1 : 0;
            case SettingId.SpeedLoss: return (int)settings.SpeedLoss;
            case SettingId.SpeedLossMicroseconds: return settings.SpeedLossMicroseconds;
            case SettingId.ResistiveConfirmMicroseconds: return settings.ResistiveConfirmMicroseconds;
            case SettingId.SpinningStart: return settings.SpinningStart ? 1 : 0;
            case SettingId.FieldContactorFitted: return settings.FieldContactorFitted ? 1 : 0;
            case SettingId.FieldContactFitted: return settings.FieldContactFitted ? 1 : 0;
            case SettingId.FieldSensorFitted: return settings.FieldSensorFitted ? 1 : 0;
            case SettingId.FieldBuildMicroseconds: return settings.FieldBuildMicroseconds;
            case SettingId.MaximumFieldMicroseconds: return settings.MaximumFieldMicroseconds;
            case SettingId.TripConfirmMicroseconds: return settings.TripConfirmMicroseconds;
            case SettingId.DipAction: return (int)settings.DipAction;
            case SettingId.DipMicroseconds: return settings.DipMicroseconds;
            case SettingId.SupplyHighMicroseconds: return settings.SupplyHighMicroseconds;
            case SettingId.ResistorSensorFitted: return settings.ResistorSensorFitted ? 1 : 0;
            case SettingId.StartsPerHour: return settings.StartsPerHour;
            case SettingId.StallMicroseconds: return settings.StallMicroseconds;
            case SettingId.MaximumStartMicroseconds: return settings.MaximumStartMicroseconds;
            case SettingId.DisagreementMicroseconds: return settings.DisagreementMicroseconds;
            case SettingId.MaximumTickMicroseconds: return settings.MaximumTickMicroseconds;
            case SettingId.RequiredPermissives: return settings.RequiredPermissives;
            case SettingId.BrakeFitted: return settings.BrakeFitted ? 1 : 0;
            case SettingId.BrakeContactFitted: return settings.BrakeContactFitted ? 1 : 0;
            case SettingId.BrakeDelayMicroseconds: return settings.BrakeDelayMicroseconds;
            case SettingId.MaximumBrakeMicroseconds: return settings.MaximumBrakeMicroseconds;
            default: return 0;
        }
    }

    /// <summary>Writes a whole number; a setting that is none is left alone.</summary>
    public static void SetWhole(Settings settings, SettingId id, int number)
    {
        switch (id)
        {
            case SettingId.StageCount: settings.StageCount = number; break;
            case SettingId.ConfirmMicroseconds: settings.ConfirmMicroseconds = number; break;
            case SettingId.MinimumDwellMicroseconds: settings.MinimumDwellMicroseconds = number; break;
            case SettingId.MaximumStageMicroseconds: settings.MaximumStageMicroseconds = number; break;
            case SettingId.ContactMicroseconds: settings.ContactMicroseconds = number; break;
            case SettingId.FluxSource: settings.FluxSource = (FluxSource)number; break;
            case SettingId.CurvePoints: settings.CurvePoints = number; break;
            case SettingId.LineContactFitted: settings.LineContactFitted = number != 0; break;
            case SettingId.StageContactsFitted: settings.StageContactsFitted = number != 0; break;
            case SettingId.StepSettleMicroseconds: settings.StepSettleMicroseconds = number; break;
            case SettingId.SpeedSensorFitted: settings.SpeedSensorFitted = number != 0; break;
            case SettingId.SpeedLoss: settings.SpeedLoss = (SpeedLossAction)number; break;
            case SettingId.SpeedLossMicroseconds: settings.SpeedLossMicroseconds = number; break;
            case SettingId.ResistiveConfirmMicroseconds: settings.ResistiveConfirmMicroseconds = number; break;
            case SettingId.SpinningStart: settings.SpinningStart = number != 0; break;
            case SettingId.FieldContactorFitted: settings.FieldContactorFitted = number != 0; break;
            case SettingId.FieldContactFitted: settings.FieldContactFitted = number != 0; break;
            case SettingId.FieldSensorFitted: settings.FieldSensorFitted = number != 0; break;
            case SettingId.FieldBuildMicroseconds: settings.FieldBuildMicroseconds = number; break;
            case SettingId.MaximumFieldMicroseconds: settings.MaximumFieldMicroseconds = number; break;
            case SettingId.TripConfirmMicroseconds: settings.TripConfirmMicroseconds = number; break;
            case SettingId.DipAction: settings.DipAction = (DipAction)number; break;
            case SettingId.DipMicroseconds: settings.DipMicroseconds = number; break;
            case SettingId.SupplyHighMicroseconds: settings.SupplyHighMicroseconds = number; break;
            case SettingId.ResistorSensorFitted: settings.ResistorSensorFitted = number != 0; break;
            case SettingId.StartsPerHour: settings.StartsPerHour = number; break;
            case SettingId.StallMicroseconds: settings.StallMicroseconds = number; break;
            case SettingId.MaximumStartMicroseconds: settings.MaximumStartMicroseconds = number; break;
            case SettingId.DisagreementMicroseconds: settings.DisagreementMicroseconds = number; break;
            case SettingId.MaximumTickMicroseconds: settings.MaximumTickMicroseconds = number; break;
            case SettingId.RequiredPermissives: settings.RequiredPermissives = number; break;
            case SettingId.BrakeFitted: settings.BrakeFitted = number != 0; break;
            case SettingId.BrakeContactFitted: settings.BrakeContactFitted = number != 0; break;
            case SettingId.BrakeDelayMicroseconds: settings.BrakeDelayMicroseconds = number; break;
            case SettingId.MaximumBrakeMicroseconds: settings.MaximumBrakeMicroseconds = number; break;
        }
    }

    private static int CurveCount(Settings settings, float[] points)
    {
        int count = settings.CurvePoints < 1 ? 0 : settings.CurvePoints > Settings.MostCurvePoints ? Settings.MostCurvePoints : settings.CurvePoints;
        return points == null || points.Length < count ? 0 : count;
    }
}
