using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Takes a whole set of settings, value by value in the order of their table, and gives it away only when all of it is there and
/// sound. Until then nothing that runs sees any of it.
/// </summary>
public sealed class SettingsUpload
{
    private readonly Settings _staged = new Settings();
    private readonly SettingsCheck _check = new SettingsCheck();
    private readonly Fnv _sum = new Fnv();
    private readonly int _emptySum;
    private bool _isOpen;
    private int _row;
    private int _index;
    private int _valuesTaken;
    private int _valuesAnnounced;
    private int _checksum;
    private int _caseHash;

    /// <summary>The setting that the last answer speaks of.</summary>
    public SettingId Setting;

    /// <summary>What is wrong with it.</summary>
    public SettingProblem Problem;

    /// <summary>Builds an upload that has not been begun.</summary>
    public SettingsUpload()
    {
        _emptySum = _sum.Sum;
    }

    /// <summary>Begins; what an upload before it has left is dropped.</summary>
    public LinkReason Begin(UploadBegin announced)
    {
        Drop();
        if (announced.SettingsVersion != SettingTable.Version) return LinkReason.WrongVersion;
        _isOpen = true;
        _row = 0;
        _index = 0;
        _valuesTaken = 0;
        _valuesAnnounced = announced.ValueCount;
        _checksum = announced.Checksum;
        _caseHash = announced.CaseHash;
        _sum.Sum = _emptySum;
        _sum.Add(SettingTable.Version);
        return LinkReason.Done;
    }

    /// <summary>Takes the next value. One that is refused is not taken and may be sent again.</summary>
    public LinkReason Take(UploadValue value)
    {
        Setting = value.Setting;
        Problem = SettingProblem.None;
        if (!_isOpen) return LinkReason.NoUpload;
        if (value.Setting <= SettingId.None || (int)value.Setting > SettingTable.Rows.Length) return LinkReason.UnknownSetting;
        if (IsAtEnd()) return LinkReason.OutOfOrder;
        SettingRow row = SettingTable.Rows[_row];
        if (value.Setting != row.Id || value.Index != _index) return LinkReason.OutOfOrder;
        if (!TryStage(row, value.Bits)) return LinkReason.OutOfRange;
        // The order and the numbers are those that the set's own checksum goes by.
        _sum.Add(value.Bits);
        _index++;
        _valuesTaken++;
        return LinkReason.Done;
    }

    /// <summary>Gives the set to be kept, if it is whole and sound. Ends the upload either way.</summary>
    public LinkReason Commit(ISettingsTarget target)
    {
        bool wasOpen = _isOpen;
        Drop();
        if (!wasOpen) return LinkReason.NoUpload;
        if (!IsAtEnd() || _valuesTaken != _valuesAnnounced) return LinkReason.Truncated;
        if (_sum.Sum != _checksum) return LinkReason.ChecksumMismatch;
        _check.Run(_staged);
        if (_check.Count > 0)
        {
            Setting = _check.Found[0];
            Problem = _check.Problems[0];
            return LinkReason.Contradiction;
        }

        return target.TryKeep(_staged, _checksum, _caseHash) ? LinkReason.Done : LinkReason.NotStored;
    }

    /// <summary>Ends the upload without keeping anything.</summary>
    public void Drop()
    {
        _isOpen = false;
        Setting = SettingId.None;
        Problem = SettingProblem.None;
    }

    // Goes on to the next setting that has values in this set.
    private bool IsAtEnd()
    {
        while (_row < SettingTable.Rows.Length && _index >= SettingAccess.Count(_staged, SettingTable.Rows[_row].Id))
        {
            _row++;
            _index = 0;
        }

        return _row == SettingTable.Rows.Length;
    }

    private bool TryStage(SettingRow row, int bits)
    {
        if (row.IsWhole)
        {
            if (!row.AllowsWhole(bits)) return false;
            SettingAccess.SetWhole(_staged, row.Id, bits);
            return true;
        }

        float number = SingleBits.ToNumber(bits);
        if (!row.Allows(number)) return false;
        SettingAccess.Set(_staged, row.Id, _index, number);
        return true;
    }
}
