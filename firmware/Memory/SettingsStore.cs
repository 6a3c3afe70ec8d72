using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Keeps the controller's settings over a power loss. What it cannot read back whole, sound and of this version is no
/// settings at all: a controller built on <see cref="Kept"/> then stays <see cref="Phase.NotSetUp"/>, and <see cref="State"/> says why.
/// </summary>
public sealed class SettingsStore : ISettingsTarget
{
    private const int HeadBytes = 8;

    private readonly TwoCopyStore _store;
    private readonly SettingsCheck _check = new SettingsCheck();

    /// <summary>Looks for settings that were kept.</summary>
    /// <param name="memory">The memory.</param>
    /// <param name="address">First byte of their place, which begins a page; it takes <see cref="TwoCopyStore.BytesNeeded"/> of <see cref="MostBytes"/>.</param>
    public SettingsStore(INonVolatile memory, int address)
    {
        _store = new TwoCopyStore(memory, address, MostBytes, SettingTable.Version);
        State = _store.State;
        Settings? found = State == StoreState.Sound ? Read() : null;
        if (State == StoreState.Sound && found == null) State = StoreState.Unsound;
        Kept = found ?? new Settings();
        CaseHash = found == null ? 0 : _store.Content.GetInt(0);
        Checksum = SettingsChecksum.Of(Kept);
    }

    /// <summary>Longest content: case hash, checksum, and every value of the largest set, bytes.</summary>
    public static int MostBytes => HeadBytes + 4 * (SettingTable.Rows.Length + 2 * (Settings.MostStages + Settings.MostCurvePoints) - 3);

    /// <summary>Why there are no settings, or <see cref="StoreState.Sound"/>.</summary>
    public StoreState State { get; private set; }

    /// <inheritdoc/>
    /// <remarks>Another object after each upload; empty settings, which fail their check, where there are none.</remarks>
    public Settings Kept { get; private set; }

    /// <inheritdoc/>
    public int Checksum { get; private set; }

    /// <inheritdoc/>
    public int CaseHash { get; private set; }

    /// <inheritdoc/>
    /// <remarks>Allocates the new set, and takes as long as the memory needs for an erasure.</remarks>
    public bool TryKeep(Settings settings, int checksum, int caseHash)
    {
        WriteContent(settings, checksum, caseHash);
        // What a reboot would make of it, before it takes the place of what is kept.
        Settings? copy = Read();
        if (copy == null || !_store.TrySave()) return false;
        Kept = copy;
        CaseHash = caseHash;
        Checksum = checksum;
        State = StoreState.Sound;
        return true;
    }

    private void WriteContent(Settings settings, int checksum, int caseHash)
    {
        StoredBytes content = _store.Content;
        content.PutInt(0, caseHash);
        content.PutInt(4, checksum);
        int end = HeadBytes;
        for (int row = 0; row < SettingTable.Rows.Length; row++)
        {
            SettingId id = SettingTable.Rows[row].Id;
            int count = SettingAccess.Count(settings, id);
            for (int i = 0; i < count; i++)
            {
                if (SettingTable.Rows[row].IsWhole) content.PutInt(end, SettingAccess.GetWhole(settings, id));
                else content.PutFloat(end, SettingAccess.Get(settings, id, i));
                end += 4;
            }
        }

        content.Length = end;
    }

    private Settings? Read()
    {
        StoredBytes content = _store.Content;
        Settings settings = new Settings();
        int end = HeadBytes;
        // The counts stand ahead of what they count.
        for (int row = 0; row < SettingTable.Rows.Length; row++)
        {
            SettingId id = SettingTable.Rows[row].Id;
            int count = SettingAccess.Count(settings, id);
            if (end + 4 * count > content.Length) return null;
            for (int i = 0; i < count; i++)
            {
                if (SettingTable.Rows[row].IsWhole) SettingAccess.SetWhole(settings, id, content.GetInt(end));
                else SettingAccess.Set(settings, id, i, content.GetFloat(end));
                end += 4;
            }
        }

        _check.Run(settings);
        bool isSound = end == content.Length && _check.Count == 0 && SettingsChecksum.Of(settings) == content.GetInt(4);
        return isSound ? settings : null;
    }
}
