namespace StarterCtl.Core;

/// <summary>One number that stands for a whole set of settings, the same on the board and on the desk.</summary>
/// <remarks>FNV-1a, 32 bits, over the table's version and every value's bits, low byte first.</remarks>
public static class SettingsChecksum
{
    private const int Basis = unchecked((int)2166136261);
    private const int Prime = 16777619;

    /// <summary>The checksum of a set.</summary>
    public static int Of(Settings settings)
    {
        int hash = Add(Basis, SettingTable.Version);
        for (int i = 0; i < SettingTable.Rows.Length; i++)
        {
            SettingRow row = SettingTable.Rows[i];
            int count = SettingAccess.Count(settings, row.Id);
            for (int j = 0; j < count; j++)
            {
                hash = row.IsWhole ? Add(hash, SettingAccess.GetWhole(settings, row.Id)) : Add(hash, SettingAccess.Get(settings, row.Id, j));
            }
        }

        return hash;
    }

    private static int Add(int hash, float number)
    {
        byte[] bytes = System.BitConverter.GetBytes(number);
        for (int i = 0; i < bytes.Length; i++) hash = unchecked((hash ^ bytes[i]) * Prime);
        return hash;
    }

    private static int Add(int hash, int number)
    {
        for (int shift = 0; shift < 32; shift += 8) hash = unchecked((hash ^ ((number >> shift) & 255)) * Prime);
        return hash;
    }
}
