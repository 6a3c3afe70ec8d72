using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>One value of a set of settings as it goes over the link.</summary>
internal readonly record struct SettingNumber(SettingId Id, int Index, int Bits)
{
    /// <summary>Name as texts have it, numbered from 1 where a setting has several values.</summary>
    internal string Name => Row.Name + (SettingsText.IsNumbered(Id) ? $".{Index + 1}" : "");

    /// <summary>The number in words.</summary>
    internal string Written => Row.IsWhole ? $"{Bits}" : Text.Number(SingleBits.ToNumber(Bits));

    /// <summary>What is allowed.</summary>
    internal string Range =>
        $"{(Row.IncludesLowest ? "" : "above ")}{Text.Number(Row.Lowest)} to {Text.Number(Row.Highest)}{(Row.Unit.Length > 0 ? " " + Row.Unit : "")}";

    private SettingRow Row => SettingTable.Rows[(int)Id - 1];

    /// <summary>Every value of a set, in the order of the table.</summary>
    internal static List<SettingNumber> Of(Settings settings)
    {
        List<SettingNumber> numbers = [];
        foreach (SettingRow row in SettingTable.Rows)
        {
            for (int i = 0; i < SettingAccess.Count(settings, row.Id); i++)
            {
                int bits = row.IsWhole ? SettingAccess.GetWhole(settings, row.Id) : SingleBits.Of(SettingAccess.Get(settings, row.Id, i));
                numbers.Add(new SettingNumber(row.Id, i, bits));
            }
        }

        return numbers;
    }

    /// <summary>The checksum of the values as they are sent: the set's own, but for a minus zero, which is sent as zero.</summary>
    internal static int Checksum(IEnumerable<SettingNumber> numbers)
    {
        Fnv sum = new();
        sum.Add(SettingTable.Version);
        foreach (SettingNumber number in numbers) sum.Add(number.Bits);
        return sum.Sum;
    }

    /// <summary>Writes the value into a set.</summary>
    internal void WriteTo(Settings settings)
    {
        if (Row.IsWhole) SettingAccess.SetWhole(settings, Id, Bits);
        else SettingAccess.Set(settings, Id, Index, SingleBits.ToNumber(Bits));
    }
}
