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
            case SettingId.None:
                return 0;
            default:
                return 1;
        }
    }

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
        }
    }
}
