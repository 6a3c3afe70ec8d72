using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A set of settings as a text that a person can read: a line each, with unit, version first and checksum last.</summary>
public static class SettingsText
{
    private const string VersionName = "version";
    private const string ChecksumName = "checksum";

    /// <summary>Writes a set.</summary>
    /// <returns>Lines "name = value unit"; those of stages and curve points are numbered: volts-left.1, volts-left.2 ...; a curve without points is left out.</returns>
    public static string Write(Settings settings)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{VersionName} = {SettingTable.Version}\n");
        foreach (SettingRow row in SettingTable.Rows)
        {
            int count = SettingAccess.Count(settings, row.Id);
            for (int i = 0; i < count; i++)
            {
                string value = row.IsWhole
                    ? SettingAccess.GetWhole(settings, row.Id).ToString(CultureInfo.InvariantCulture)
                    : SettingAccess.Get(settings, row.Id, i).ToString("R", CultureInfo.InvariantCulture);
                text.Append(NameOf(row, i)).Append(" = ").Append(value);
                if (row.Unit.Length > 0) text.Append(' ').Append(row.Unit);
                text.Append('\n');
            }
        }

        text.Append(CultureInfo.InvariantCulture, $"{ChecksumName} = {Checksum(settings)}\n");
        return text.ToString();
    }

    /// <summary>The checksum as texts show it.</summary>
    public static string Checksum(Settings settings) =>
        "0x" + SettingsChecksum.Of(settings).ToString("X8", CultureInfo.InvariantCulture);

    /// <summary>True for a setting with a value for each stage or each point of the curve; its names carry a number, from 1.</summary>
    public static bool IsNumbered(SettingId id) =>
        id is SettingId.StageOhms or SettingId.VoltsLeft or SettingId.CurveAmps or SettingId.CurveConstants;

    /// <summary>Reads a set back.</summary>
    /// <param name="text">What <see cref="Write"/> gave.</param>
    /// <exception cref="FormatException">A line is unknown, missing, double, out of range, of another version, or the checksum differs.</exception>
    public static Settings Read(string text)
    {
        Dictionary<string, string> lines = Lines(text);
        string version = Take(lines, VersionName);
        if (version != SettingTable.Version.ToString(CultureInfo.InvariantCulture))
        {
            throw new FormatException($"{VersionName}: found {version}; allowed: {SettingTable.Version}");
        }

        Settings settings = new();
        foreach (SettingRow row in SettingTable.Rows)
        {
            // Counts stand before what they count, so the number of values is known when they are read.
            int count = SettingAccess.Count(settings, row.Id);
            for (int i = 0; i < count; i++) ReadValue(settings, row, i, Take(lines, NameOf(row, i)));
        }

        string checksum = Take(lines, ChecksumName);
        if (checksum != Checksum(settings)) throw new FormatException($"{ChecksumName}: found {checksum}; the values make {Checksum(settings)}");
        foreach (string name in lines.Keys) throw new FormatException($"{name}: found a setting that this set does not have");
        return settings;
    }

    private static void ReadValue(Settings settings, SettingRow row, int index, string written)
    {
        string name = NameOf(row, index);
        string unit = row.Unit.Length > 0 ? " " + row.Unit : "";
        string number = written.EndsWith(unit, StringComparison.Ordinal) ? written[..^unit.Length] : "";
        string range = $"{(row.IncludesLowest ? "" : "above ")}{Text.Number(row.Lowest)} to {Text.Number(row.Highest)}{unit}";
        if (row.IsWhole)
        {
            bool isWhole = int.TryParse(number, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int whole);
            if (!isWhole || !row.AllowsWhole(whole)) throw new FormatException($"{name}: found {written}; allowed: a whole number, {range}");
            SettingAccess.SetWhole(settings, row.Id, whole);
            return;
        }

        bool isNumber = float.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out float value);
        if (!isNumber || !row.Allows(value)) throw new FormatException($"{name}: found {written}; allowed: {range}");
        SettingAccess.Set(settings, row.Id, index, value);
    }

    private static Dictionary<string, string> Lines(string text)
    {
        Dictionary<string, string> lines = [];
        int number = 0;
        foreach (string line in text.Split('\n'))
        {
            number++;
            if (string.IsNullOrWhiteSpace(line)) continue;
            int equals = line.IndexOf(" = ", StringComparison.Ordinal);
            if (equals < 0) throw new FormatException($"line {number}: found \"{line}\"; allowed: name = value");
            if (!lines.TryAdd(line[..equals], line[(equals + 3)..].TrimEnd('\r'))) throw new FormatException($"line {number}: {line[..equals]} stands twice");
        }

        return lines;
    }

    private static string Take(Dictionary<string, string> lines, string name) =>
        lines.Remove(name, out string? value) ? value : throw new FormatException($"{name}: found nothing");

    // Only the numbers of the stages and the points of a curve come more than once.
    private static string NameOf(SettingRow row, int index) => IsNumbered(row.Id) ? $"{row.Name}.{index + 1}" : row.Name;
}
