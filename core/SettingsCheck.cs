namespace StarterCtl.Core;

/// <summary>Checks a set of settings and names every one that is not usable.</summary>
public sealed class SettingsCheck
{
    /// <summary>The settings that are not usable, in the order of the table; <see cref="Count"/> of them.</summary>
    public readonly SettingId[] Found = new SettingId[SettingTable.Rows.Length];

    /// <summary>How many were found.</summary>
    public int Count;

    /// <summary>Checks a set.</summary>
    public void Run(Settings settings)
    {
        Count = 0;
        for (int i = 0; i < SettingTable.Rows.Length; i++)
        {
            SettingRow row = SettingTable.Rows[i];
            if (IsInRange(settings, row) && IsInOrder(settings, row.Id)) continue;
            Found[Count] = row.Id;
            Count++;
        }
    }

    private static bool IsInRange(Settings settings, SettingRow row)
    {
        if (row.IsWhole) return row.AllowsWhole(SettingAccess.GetWhole(settings, row.Id));
        int count = SettingAccess.Count(settings, row.Id);
        for (int i = 0; i < count; i++)
        {
            if (!row.Allows(SettingAccess.Get(settings, row.Id, i))) return false;
        }

        return count > 0;
    }

    // What holds between settings, beyond each one's own range.
    private static bool IsInOrder(Settings settings, SettingId id)
    {
        if (id == SettingId.MaximumStageMicroseconds) return settings.MaximumStageMicroseconds > settings.MinimumDwellMicroseconds;
        int count = SettingAccess.Count(settings, id);
        for (int i = 1; i < count; i++)
        {
            if (!(SettingAccess.Get(settings, id, i) < SettingAccess.Get(settings, id, i - 1))) return false;
        }

        return true;
    }
}
