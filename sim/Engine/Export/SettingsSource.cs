using System;
using System.Globalization;
using System.Linq;
using System.Reflection;
using System.Text;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>The settings of a case as C# source, to be compiled into the firmware: what a board without an upload starts from.</summary>
public static class SettingsSource
{
    /// <summary>Writes the source.</summary>
    /// <param name="settings">A checked set.</param>
    /// <param name="periodMicroseconds">Control period of the case, microseconds.</param>
    /// <param name="title">The case's title.</param>
    /// <param name="caseName">The case's file name.</param>
    /// <param name="caseSha256">SHA-256 of the case file.</param>
    /// <returns>A class with the set, its checksum and the case's hash; every number reads back to the same bits.</returns>
    public static string Of(Settings settings, int periodMicroseconds, string title, string caseName, string caseSha256)
    {
        StringBuilder text = new();
        text.Append($$"""
            // Written by: starterctl export settings {{caseName}}
            // Do not edit: the board compares the values with the checksum. Change the case and write this file anew.
            using StarterCtl.Core;

            namespace StarterCtl.Board;

            /// <summary>{{Escaped(title)}}</summary>
            public static class CaseSettings
            {
                /// <summary>Beginning of the SHA-256 of the case file, {{caseSha256}}.</summary>
                public const int CaseHash = unchecked((int)0x{{CaseHash.Shown(CaseHash.Of(caseSha256))}});

                /// <summary>Checksum of the settings.</summary>
                public const int Checksum = unchecked((int){{SettingsText.Checksum(settings)}});

                /// <summary>Version of the table of settings.</summary>
                public const int Version = {{SettingTable.Version}};

                /// <summary>Time between two decisions of the controller, microseconds.</summary>
                public const int PeriodMicroseconds = {{periodMicroseconds}};

                /// <summary>The settings of the case.</summary>
                public static Settings Build()
                {
                    Settings settings = new Settings();

            """.ReplaceLineEndings("\n"));
        foreach (SettingRow row in SettingTable.Rows)
        {
            int count = SettingAccess.Count(settings, row.Id);
            for (int i = 0; i < count; i++) text.Append("        settings.").Append(Assignment(settings, row, i)).Append('\n');
        }

        text.Append("        return settings;\n    }\n}\n");
        return text.ToString();
    }

    private static string Assignment(Settings settings, SettingRow row, int index)
    {
        string name = row.Id.ToString();
        FieldInfo field = typeof(Settings).GetField(name)
            ?? throw new InvalidOperationException($"The setting {name} has no field of its name in {nameof(Settings)}.");
        if (!row.IsWhole)
        {
            string number = SettingAccess.Get(settings, row.Id, index).ToString("R", CultureInfo.InvariantCulture) + "f";
            string place = SettingsText.IsNumbered(row.Id) ? string.Create(CultureInfo.InvariantCulture, $"[{index}]") : "";
            return $"{name}{place} = {number};{Unit(row)}";
        }

        int whole = SettingAccess.GetWhole(settings, row.Id);
        string value = field.FieldType == typeof(bool) ? (whole == 1 ? "true" : "false")
            : field.FieldType.IsEnum ? $"{field.FieldType.Name}.{Enum.GetName(field.FieldType, whole)}"
            : whole.ToString(CultureInfo.InvariantCulture);
        return $"{name} = {value};{Unit(row)}";
    }

    private static string Unit(SettingRow row) => row.Unit.Length == 0 ? "" : $" // {row.Unit}";

    // A title may hold anything that fits a line; here it stands in a comment of XML.
    private static string Escaped(string title) => string.Concat(title.Select(letter => letter switch
    {
        '&' => "&amp;",
        '<' => "&lt;",
        '>' => "&gt;",
        _ => letter.ToString(),
    }));
}
