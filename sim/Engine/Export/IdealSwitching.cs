using StarterCtl.Core;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>
/// The same start switched ideally: contacts follow at once, decisions come every 20 microseconds, nothing has to be confirmed or
/// to last, nothing warms up. What a circuit simulator with ideal switches can be held against.
/// </summary>
internal static class IdealSwitching
{
    /// <summary>Time between two decisions, microseconds.</summary>
    public const int PeriodMicroseconds = 20;

    /// <summary>The setup with ideal contactors.</summary>
    public static RunSetup Of(RunSetup setup) => setup with { Contactors = new Contactors(0, 0), PeriodMicroseconds = PeriodMicroseconds, Jitter = null, Heat = null };

    /// <summary>A copy of the settings that decides at once and sees every contact and the speed.</summary>
    public static Settings Of(Settings settings)
    {
        Settings ideal = new();
        foreach (SettingRow row in SettingTable.Rows)
        {
            int count = SettingAccess.Count(settings, row.Id);
            for (int i = 0; i < count; i++)
            {
                if (row.IsWhole) SettingAccess.SetWhole(ideal, row.Id, SettingAccess.GetWhole(settings, row.Id));
                else SettingAccess.Set(ideal, row.Id, i, SettingAccess.Get(settings, row.Id, i));
            }
        }

        ideal.ConfirmMicroseconds = 0;
        ideal.MinimumDwellMicroseconds = 0;
        ideal.SpeedSensorFitted = true;
        ideal.LineContactFitted = true;
        ideal.StageContactsFitted = true;
        return ideal;
    }
}
