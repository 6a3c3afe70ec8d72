using System;
using System.Globalization;
using System.IO;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Records;

/// <summary>What stands at the beginning of every record: who wrote it, of what, with which settings.</summary>
public sealed record RecordHeader
{
    /// <summary>Format that this program writes and reads.</summary>
    public const int PresentVersion = 1;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>Version of the header and the columns; columns that are added do not change it.</summary>
    public int FormatVersion { get; init; } = PresentVersion;

    /// <summary>Version of the program that wrote it, such as 0.1.0.</summary>
    public string ProgramVersion { get; init; } = typeof(RecordHeader).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <summary>Version of the core that decided.</summary>
    public required string CoreVersion { get; init; }

    /// <summary>Name of the case file, without folders.</summary>
    public required string Case { get; init; }

    /// <summary>SHA-256 of the case file's bytes, hexadecimal.</summary>
    public required string CaseSha256 { get; init; }

    /// <summary>The controller's settings, as <see cref="SettingsText"/> writes them, with their checksum.</summary>
    public required string Settings { get; init; }

    /// <summary>Seed of the sensors' noise; null where they are ideal.</summary>
    public required int? SensorSeed { get; init; }

    /// <summary>Control period, microseconds.</summary>
    public required int ControlPeriodMicroseconds { get; init; }

    /// <summary>Time between samples, microseconds.</summary>
    public required long RecordPeriodMicroseconds { get; init; }

    /// <summary>True where the controller ticked by a clock of its own: then the rows are the machine's steps and not its ticks.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool ByTheClock { get; init; }

    /// <summary>The header of a simulated case.</summary>
    /// <param name="file">The case.</param>
    /// <param name="setup">What is simulated.</param>
    /// <param name="settings">The controller's settings.</param>
    /// <param name="recordPeriodMicroseconds">Time between samples, microseconds.</param>
    public static RecordHeader Of(CaseFile file, RunSetup setup, Settings settings, long recordPeriodMicroseconds) => new()
    {
        CoreVersion = CoreIdentity.Version,
        Case = Path.GetFileName(file.FileName),
        CaseSha256 = file.Sha256,
        Settings = SettingsText.Write(settings),
        SensorSeed = setup.Sensors?.Seed,
        ControlPeriodMicroseconds = setup.PeriodMicroseconds,
        RecordPeriodMicroseconds = recordPeriodMicroseconds,
    };

    /// <summary>The header as JSON. It has no dollar sign, which ends a text in VCD.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options).Replace("$", @"\u0024", StringComparison.Ordinal);

    /// <summary>Reads a header back.</summary>
    /// <param name="place">Where it stands, for the message.</param>
    /// <param name="json">What <see cref="ToJson"/> gave.</param>
    /// <exception cref="RecordException">It is no header, or one of another format.</exception>
    public static RecordHeader Read(string place, string json)
    {
        const string allowed = "the header that was written with the record";
        try
        {
            RecordHeader header = JsonSerializer.Deserialize<RecordHeader>(json, Options) ?? throw new RecordException(place, "nothing", allowed);
            if (header.FormatVersion == PresentVersion) return header;
            throw new RecordException(
                $"{place}: formatVersion",
                header.FormatVersion.ToString(CultureInfo.InvariantCulture),
                $"{PresentVersion}, what this program reads; version {header.ProgramVersion} wrote it");
        }
        catch (JsonException error)
        {
            throw new RecordException(place, $"no header ({error.Message})", allowed);
        }
    }
}
