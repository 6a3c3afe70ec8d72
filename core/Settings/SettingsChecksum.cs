namespace StarterCtl.Core;

/// <summary>One number that stands for a whole set of settings, the same on the board and on the desk.</summary>
/// <remarks>Over the table's version and every value's bits.</remarks>
public static class SettingsChecksum
{
    /// <summary>The checksum of a set.</summary>
    public static int Of(Settings settings)
    {
        Fnv sum = new Fnv();
        sum.Add(SettingTable.Version);
        for (int i = 0; i < SettingTable.Rows.Length; i++)
        {
            SettingRow row = SettingTable.Rows[i];
            int count = SettingAccess.Count(settings, row.Id);
            for (int j = 0; j < count; j++)
            {
                if (row.IsWhole) sum.Add(SettingAccess.GetWhole(settings, row.Id));
                else sum.Add(SettingAccess.Get(settings, row.Id, j));
            }
        }

        return sum.Sum;
    }
}
